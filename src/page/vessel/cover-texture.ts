// A cover of film as the screen holds it, taken up strip by strip: all at once it would hold up the page for a tenth of a second or more.
import { Texture, Vector2, type WebGLRenderer } from 'three';
import type { FilmCover } from '../model/messages.ts';

export class CoverTexture {
  readonly texture: Texture;
  readonly #strips: FilmCover['strips'];

  /** `anisotropy`: how well the screen can show what is seen at a slant. */
  constructor({ width, height, strips }: FilmCover, anisotropy: number) {
    this.texture = new Texture({ width, height });
    this.#strips = strips;
    // Room for it first: its strips are put there one by one.
    this.texture.source.dataReady = false;
    // The places run down the sheet, as the strips do.
    this.texture.flipY = false;
    this.texture.anisotropy = anisotropy;
    this.texture.needsUpdate = true;
  }

  /** Takes up one strip a step. */
  *takenUp(renderer: WebGLRenderer): Generator<undefined, void> {
    renderer.initTexture(this.texture);
    let top = 0;
    for (const [i, strip] of this.#strips.entries()) {
      // Its smaller sizes are made of the whole, with the last strip.
      this.texture.generateMipmaps = i === this.#strips.length - 1;
      renderer.copyTextureToTexture(new Texture(strip), this.texture, null, new Vector2(0, top));
      top += strip.height;
      yield;
    }
  }
}
