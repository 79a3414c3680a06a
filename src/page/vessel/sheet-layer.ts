// A layer on the sheet: it shows where the cover says, or everywhere but there, in one colour or several blended up the wall.
import {
  BufferAttribute as Attribute,
  type BufferAttribute,
  BufferGeometry,
  Color,
  Mesh,
  MeshStandardMaterial,
  type Texture,
} from 'three';
import type { Channel } from '../model/cover-channels.ts';
import type { SolidSeen } from '../model/messages.ts';

/** One sheen for everything: between a film and its ground nothing but colour is known. */
export const roughness = 0.6;

/** Where a layer shows. */
export type Shows = 'covered' | 'bare' | 'everywhere';

interface Cover {
  readonly texture: Texture;
  readonly channel: Channel;
}

/** What the shader asks of the cover; `bare` is all that is not covered. */
const alphaOf = ({ channel }: Cover, shows: Shows): string =>
  shows === 'everywhere'
    ? ''
    : `diffuseColor.a *= ${shows === 'bare' ? '1.0 - ' : ''}texture2D(alphaMap, vAlphaMapUv).${channel};`;

export class SheetLayer {
  readonly mesh: Mesh<BufferGeometry, MeshStandardMaterial>;
  readonly #colours: BufferAttribute;
  /** How far up the sheet each corner is, 0 to 1. */
  readonly #up: Float32Array;
  #painted = '';

  /** `order`: of layers in the same place, one with more lies on one with less. */
  constructor({ sheet }: Pick<SolidSeen, 'sheet'>, cover: Cover, shows: Shows, order: number) {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new Attribute(sheet.positions, 3));
    geometry.setAttribute('normal', new Attribute(sheet.normals, 3));
    geometry.setAttribute('uv', new Attribute(sheet.places, 2));
    geometry.setIndex(new Attribute(sheet.triangles, 1));
    this.#colours = new Attribute(new Float32Array(sheet.positions.length), 3);
    geometry.setAttribute('color', this.#colours);
    this.#up = heights(sheet.positions);
    const material = new MeshStandardMaterial({
      roughness,
      vertexColors: true,
      transparent: true,
      depthWrite: false,
      alphaMap: cover.texture,
      polygonOffset: true,
      polygonOffsetFactor: -order,
      polygonOffsetUnits: -order,
    });
    const alpha = alphaOf(cover, shows);
    material.onBeforeCompile = (shader) => {
      shader.fragmentShader = shader.fragmentShader.replace('#include <alphamap_fragment>', alpha);
    };
    material.customProgramCacheKey = () => alpha;
    this.mesh = new Mesh(geometry, material);
    this.mesh.renderOrder = order;
  }

  /** Colour it: several are blended from foot to lip, mixed as light is. */
  paint(colours: readonly string[]): void {
    const key = colours.join();
    if (key === this.#painted) return;
    this.#painted = key;
    const stops = colours.map((colour) => new Color(colour));
    const mixed = new Color();
    for (const [corner, up] of this.#up.entries()) {
      const at = up * (stops.length - 1);
      const [low, high] = [stops[Math.floor(at)], stops[Math.ceil(at)]];
      if (!low || !high) continue;
      mixed.lerpColors(low, high, at - Math.floor(at));
      this.#colours.setXYZ(corner, mixed.r, mixed.g, mixed.b);
    }
    this.#colours.needsUpdate = true;
  }

  end(): void {
    this.mesh.geometry.dispose();
    this.mesh.material.dispose();
  }
}

/** Heights of corners as shares of the way from the lowest to the highest. */
function heights(positions: Float32Array): Float32Array {
  const ys = positions.filter((_, i) => i % 3 === 1);
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const y of ys) {
    least = Math.min(least, y);
    most = Math.max(most, y);
  }
  const reach = most - least || 1;
  return ys.map((y) => (y - least) / reach);
}
