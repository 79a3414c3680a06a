// The vessel's surfaces as they are drawn: made once for a job, then coloured, shown and hidden as the maker likes.
import {
  BufferAttribute,
  BufferGeometry,
  CanvasTexture,
  Group,
  Mesh,
  MeshStandardMaterial,
  type Texture,
} from 'three';
import type { VesselView } from '../../job/vessel-view.ts';
import { channels, coverCanvases } from './film-cover.ts';
import { coloursOf, type Looks, mannerOf } from './looks.ts';
import { roughness, SheetLayer } from './sheet-layer.ts';

type Surface = VesselView['body'];
type Layer = VesselView['layers'][number];

const seamColour = '#8a2f6b';

/** What the screen can hold of a cover. */
export interface ScreenLimits {
  /** Longest side of a picture, px. */
  readonly most: number;
  readonly anisotropy: number;
}

interface Laid {
  readonly layer: Layer;
  /** The art of the layer: film, print, or what was sprayed through the mask. */
  readonly art: SheetLayer;
  /** The mask around it. */
  readonly mask: SheetLayer;
}

export class VesselParts {
  readonly group = new Group();
  readonly #view: VesselView;
  readonly #body: Mesh<BufferGeometry, MeshStandardMaterial>;
  readonly #coats: readonly Mesh<BufferGeometry, MeshStandardMaterial>[];
  readonly #seam: Mesh | undefined;
  readonly #laid: readonly Laid[];
  /** The whole sheet, under all layers: film that is printed on, or spray before the mask is pulled. */
  readonly #whole: SheetLayer | undefined;
  readonly #covers: readonly Texture[];

  constructor(view: VesselView, { most, anisotropy }: ScreenLimits) {
    this.#view = view;
    this.#body = solid(view.body, 2);
    this.#coats = view.coats.map((surface) => solid(surface, 1));
    this.#covers = coverCanvases(view, most).map((canvas) => {
      const cover = new CanvasTexture(canvas);
      // The places run down the sheet, as the canvas does.
      cover.flipY = false;
      cover.anisotropy = anisotropy;
      return cover;
    });
    const [first] = this.#covers;
    this.#whole = first && new SheetLayer(view, { texture: first, channel: 'r' }, 'everywhere', 1);
    this.#laid = view.layers.flatMap((layer, i): Laid[] => {
      const texture = this.#covers[Math.floor(i / channels.length)];
      const channel = channels[i % channels.length];
      if (!texture || !channel) return [];
      const cover = { texture, channel };
      return [
        {
          layer,
          art: new SheetLayer(view, cover, 'covered', 2 + i),
          mask: new SheetLayer(view, cover, 'bare', 2 + view.layers.length),
        },
      ];
    });
    this.#seam = view.seam && new Mesh(geometryOf(view.seam), seamPaint());
    const layers = [this.#whole, ...this.#laid.flatMap(({ art, mask }) => [art, mask])];
    this.group.add(this.#body, ...this.#coats, ...layers.flatMap((layer) => (layer ? [layer.mesh] : [])));
    if (this.#seam) this.group.add(this.#seam);
  }

  /** Colour the surfaces, and show those that are to be seen. Nothing is drawn anew. */
  dress(looks: Looks): void {
    this.#body.material.color.set(looks.blank);
    for (const coat of this.#coats) {
      coat.material.color.set(looks.coat);
      coat.visible = looks.isCoatShown;
    }
    if (this.#seam) this.#seam.visible = looks.isSeamShown;
    const manner = mannerOf(looks, this.#view.use);
    const stage = manner === 'mask' ? looks.stage : 'pulled';
    const seen = this.#laid.filter(({ layer }) => !looks.hidden.includes(layer.name));
    const [first] = seen;
    for (const laid of this.#laid) {
      const { layer, art, mask } = laid;
      art.mesh.visible = seen.includes(laid) && stage === 'pulled';
      art.paint(coloursOf(looks, layer));
      // Layers of spray are masked one after the other; the first stands for them.
      mask.mesh.visible = laid === first && stage === 'masked';
      mask.paint([looks.film]);
    }
    if (!this.#whole) return;
    this.#whole.mesh.visible = manner === 'print' || (stage === 'sprayed' && first !== undefined);
    this.#whole.paint(stage === 'sprayed' && first ? coloursOf(looks, first.layer) : [looks.film]);
  }

  end(): void {
    for (const { art, mask } of this.#laid) {
      art.end();
      mask.end();
    }
    this.#whole?.end();
    for (const cover of this.#covers) cover.dispose();
    for (const mesh of [this.#body, ...this.#coats, ...(this.#seam ? [this.#seam] : [])]) {
      mesh.geometry.dispose();
      if (mesh.material instanceof MeshStandardMaterial) mesh.material.dispose();
    }
  }
}

const seamPaint = () => new MeshStandardMaterial({ color: seamColour, roughness: 1 });

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

function geometryOf({ positions, normals, triangles }: Surface): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(normals, 3));
  geometry.setIndex(new BufferAttribute(triangles, 1));
  return geometry;
}
