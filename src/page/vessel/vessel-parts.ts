// The vessel's surfaces as they are drawn: made once for a job, then coloured, shown and hidden as the maker likes.
import { type BufferGeometry, Group, Mesh, MeshStandardMaterial, type WebGLRenderer } from 'three';
import { channels } from '../model/cover-channels.ts';
import type { SolidSeen } from '../model/messages.ts';
import { CoverTexture } from './cover-texture.ts';
import { coloursOf, type Looks, mannerOf, maskNames, type Stage } from './looks.ts';
import { roughness, SheetLayer } from './sheet-layer.ts';
import { geometryOf, WallParts } from './wall-parts.ts';

type Surface = SolidSeen['body'];
type Layer = SolidSeen['layers'][number];

interface Laid {
  readonly layer: Layer;
  /** The art of the layer: film, print, or what was sprayed through the mask. */
  readonly art: SheetLayer;
  /** The mask around it. */
  readonly mask: SheetLayer;
}

export class VesselParts {
  readonly group = new Group();
  readonly #view: SolidSeen;
  readonly #body: Mesh<BufferGeometry, MeshStandardMaterial>;
  readonly #coats: readonly Mesh<BufferGeometry, MeshStandardMaterial>[];
  readonly #wall: WallParts;
  readonly #laid: readonly Laid[];
  /** The whole sheet, under all layers: film that is printed on, or spray before the mask is pulled. */
  readonly #whole: SheetLayer | undefined;
  /** Of a job's own mask: its film, and what is sprayed around it. */
  readonly #reveal: { readonly film: SheetLayer; readonly spray: SheetLayer } | undefined;
  readonly #covers: readonly CoverTexture[];

  /** `anisotropy`: how well the screen can show a cover that is seen at a slant. */
  constructor(view: SolidSeen, anisotropy: number) {
    this.#view = view;
    this.#body = solid(view.body, 2);
    this.#coats = view.coats.map((surface) => solid(surface, 1));
    this.#covers = view.covers.map((cover) => new CoverTexture(cover, anisotropy));
    const coverAt = (i: number) => {
      const texture = this.#covers[Math.floor(i / channels.length)]?.texture;
      const channel = channels[i % channels.length];
      return texture && channel ? { texture, channel } : undefined;
    };
    const top = 2 + view.layers.length;
    const first = coverAt(0);
    this.#whole = first && new SheetLayer(view, first, 'everywhere', 1);
    this.#laid = view.layers.flatMap((layer, i): Laid[] => {
      const cover = coverAt(i);
      if (!cover) return [];
      const art = new SheetLayer(view, cover, 'covered', 2 + i);
      return [{ layer, art, mask: new SheetLayer(view, cover, 'bare', top) }];
    });
    const masked = view.mask && coverAt(view.layers.length);
    this.#reveal = masked && {
      film: new SheetLayer(view, masked, 'covered', top),
      spray: new SheetLayer(view, masked, 'bare', 1),
    };
    this.#wall = new WallParts(view, top + 1);
    const layers = this.#sheetLayers().map(({ mesh }) => mesh);
    this.group.add(this.#body, ...this.#coats, ...layers, this.#wall.group);
  }

  /** Hands its film to the screen, a little a step. */
  *takenUp(renderer: WebGLRenderer): Generator<undefined, void> {
    for (const cover of this.#covers) yield* cover.takenUp(renderer);
  }

  #sheetLayers(): readonly SheetLayer[] {
    const { film, spray } = this.#reveal ?? {};
    return [this.#whole, film, spray, ...this.#laid.flatMap(({ art, mask }) => [art, mask])].filter(
      (layer) => layer !== undefined,
    );
  }

  /** Colour the surfaces, and show those that are to be seen. Nothing is drawn anew. */
  dress(looks: Looks): void {
    this.#body.material.color.set(looks.blank);
    for (const coat of this.#coats) {
      coat.material.color.set(looks.coat);
      coat.visible = looks.isCoatShown;
    }
    const manner = mannerOf(looks, this.#view.use);
    const stage = manner === 'mask' || this.#reveal ? looks.stage : 'pulled';
    const [lowest] = this.#view.layers;
    const ofFilm = manner === 'cut' && lowest ? (coloursOf(looks, lowest)[0] ?? looks.film) : looks.film;
    this.#wall.dress(looks, ofFilm);
    this.#dressMask(looks, stage);
    const seen = this.#laid.filter(({ layer }) => !looks.hidden.includes(layer.name));
    const [first] = seen;
    for (const laid of this.#laid) {
      const { layer, art, mask } = laid;
      art.mesh.visible = seen.includes(laid) && stage === 'pulled';
      art.paint(coloursOf(looks, layer));
      // Layers of spray are masked one after the other; the first stands for them.
      mask.mesh.visible = !this.#reveal && laid === first && stage === 'masked';
      mask.paint([looks.film]);
    }
    if (!this.#whole) return;
    const isSprayed = !this.#reveal && stage === 'sprayed' && first !== undefined;
    this.#whole.mesh.visible = manner === 'print' || isSprayed;
    this.#whole.paint(isSprayed ? coloursOf(looks, first.layer) : [looks.film]);
  }

  /** The mask around what it follows, the spray past it; pulled, the spray stays. */
  #dressMask(looks: Looks, stage: Stage): void {
    const { mask } = this.#view;
    if (!this.#reveal || !mask) return;
    const { film, spray } = this.#reveal;
    film.mesh.visible = stage !== 'pulled';
    film.paint(coloursOf(looks, { name: maskNames.film, colour: mask.film }));
    spray.mesh.visible = stage !== 'masked' && !looks.hidden.includes(maskNames.spray);
    spray.paint(coloursOf(looks, { name: maskNames.spray, colour: mask.sprayed }));
  }

  end(): void {
    for (const layer of this.#sheetLayers()) layer.end();
    this.#wall.end();
    for (const { texture } of this.#covers) texture.dispose();
    for (const mesh of [this.#body, ...this.#coats]) {
      mesh.geometry.dispose();
      mesh.material.dispose();
    }
  }
}

/** A surface of one colour. Of surfaces in the same place, one with more `behind` is hidden by one with less. */
const solid = (surface: Surface, behind: number) =>
  new Mesh(
    geometryOf(surface),
    new MeshStandardMaterial({
      roughness,
      polygonOffset: true,
      polygonOffsetFactor: behind,
      polygonOffsetUnits: behind,
    }),
  );
