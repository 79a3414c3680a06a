// What is seen on the wall beside the sheet: the handle, cover strips, the seam's line and the edge of an overlap.
import { BufferAttribute, BufferGeometry, Group, Mesh, MeshStandardMaterial } from 'three';
import type { SolidSeen } from '../model/messages.ts';
import type { Looks } from './looks.ts';
import { roughness } from './sheet-layer.ts';

type Surface = SolidSeen['body'];
type Part = Mesh<BufferGeometry, MeshStandardMaterial>;

const colours = { seam: '#8a2f6b', lap: '#10181e' } as const;
/** The edge of an overlap is a hint of a shadow. */
const lapOpacity = 0.4;

export class WallParts {
  readonly group = new Group();
  readonly #handle: Part | undefined;
  readonly #strips: readonly Part[];
  readonly #seam: readonly Part[];

  /** `order`: past those of all layers on the sheet. */
  constructor({ seam, extras }: SolidSeen, order: number) {
    const { handle, strips, lap } = extras;
    const above = { polygonOffset: true, polygonOffsetFactor: -order, polygonOffsetUnits: -order };
    this.#handle = handle && new Mesh(geometryOf(handle), new MeshStandardMaterial({ roughness }));
    this.#strips = strips.map(
      (strip) => new Mesh(geometryOf(strip), new MeshStandardMaterial({ roughness, ...above })),
    );
    const line = (color: string, more: object = {}) =>
      new MeshStandardMaterial({ color, roughness: 1, ...above, ...more });
    this.#seam = [
      ...(seam ? [new Mesh(geometryOf(seam), line(colours.seam))] : []),
      ...(lap
        ? [new Mesh(geometryOf(lap), line(colours.lap, { transparent: true, opacity: lapOpacity }))]
        : []),
    ];
    for (const part of this.#parts()) {
      // After the sheet, which is see-through where it is bare.
      part.renderOrder = part === this.#handle ? 0 : order;
      this.group.add(part);
    }
  }

  #parts(): readonly Part[] {
    return [...(this.#handle ? [this.#handle] : []), ...this.#strips, ...this.#seam];
  }

  /** `film`: the colour of what strips are cut from. */
  dress({ blank, isSeamShown, isStripShown }: Looks, film: string): void {
    this.#handle?.material.color.set(blank);
    for (const strip of this.#strips) {
      strip.material.color.set(film);
      strip.visible = isStripShown;
    }
    for (const line of this.#seam) line.visible = isSeamShown;
  }

  end(): void {
    for (const { geometry, material } of this.#parts()) {
      geometry.dispose();
      material.dispose();
    }
  }
}

export function geometryOf({ positions, normals, triangles }: Surface): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(normals, 3));
  geometry.setIndex(new BufferAttribute(triangles, 1));
  return geometry;
}
