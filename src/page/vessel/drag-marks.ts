// What is seen in space of a motif that is dragged: its frame, and the levels that its middle stays between.
import {
  type BufferGeometry,
  CatmullRomCurve3,
  Group,
  Mesh,
  MeshBasicMaterial,
  TorusGeometry,
  TubeGeometry,
  Vector3,
} from 'three';
import type { Dragged } from '../board/motif-drag.ts';
import type { WallPlace } from '../store.ts';
import { pointOf, type WallRing } from './wall-in-space.ts';

/** Half the width of their lines, as a share of the vessel's height: they stand out of coats and film. */
const halfWide = 0.006;
/** Points of the frame from corner to corner. */
const perSide = 24;

export class DragMarks {
  readonly group = new Group();
  readonly #material: MeshBasicMaterial;

  constructor(color: string) {
    this.#material = new MeshBasicMaterial({ color });
  }

  /** None without a motif. */
  show(held: Dragged | undefined, rings: readonly WallRing[], height: number): void {
    this.#clear();
    if (!held) return;
    const wide = halfWide * height;
    for (const along of [held.limits.from, held.limits.to]) {
      const at = pointOf(rings, { turn: 0, along });
      if (at) this.#add(new TorusGeometry(at.z, wide, 6, 128).rotateX(Math.PI / 2).translate(0, at.y, 0));
    }
    const frame = frameOf(held).flatMap((place) => pointOf(rings, place) ?? []);
    if (frame.length < 3) return;
    const path = new CatmullRomCurve3(
      frame.map(({ x, y, z }) => new Vector3(x, y, z)),
      true,
      'catmullrom',
      0,
    );
    this.#add(new TubeGeometry(path, 8 * perSide, wide, 6, true));
  }

  #add(geometry: BufferGeometry): void {
    this.group.add(new Mesh(geometry, this.#material));
  }

  #clear(): void {
    for (const mesh of this.group.children) if (mesh instanceof Mesh) mesh.geometry.dispose();
    this.group.clear();
  }

  end(): void {
    this.#clear();
    this.#material.dispose();
  }
}

/** Places around the motif, once around. */
function frameOf({ at, reach: { down, up, aside } }: Dragged): readonly WallPlace[] {
  const corners = [
    { turn: at.turn - aside, along: at.along - down },
    { turn: at.turn + aside, along: at.along - down },
    { turn: at.turn + aside, along: at.along + up },
    { turn: at.turn - aside, along: at.along + up },
  ];
  return corners.flatMap((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    return Array.from({ length: perSide }, (_, k) => ({
      turn: from.turn + ((to.turn - from.turn) * k) / perSide,
      along: from.along + ((to.along - from.along) * k) / perSide,
    }));
  });
}
