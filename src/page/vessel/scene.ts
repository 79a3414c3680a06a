// The finished vessel in 3D. Loaded when it is first looked at, for its library is larger than the rest of the page.
import {
  DirectionalLight,
  Group,
  HemisphereLight,
  Mesh,
  MeshBasicMaterial,
  PerspectiveCamera,
  Raycaster,
  Scene,
  SphereGeometry,
  Vector2,
  WebGLRenderer,
} from 'three';
import type { Dragged } from '../board/motif-drag.ts';
import type { Point, Size } from '../board/sheet-view.ts';
import type { SolidSeen } from '../model/messages.ts';
import type { WallPlace } from '../store.ts';
import { DragMarks } from './drag-marks.ts';
import type { Looks, Side } from './looks.ts';
import { VesselParts } from './vessel-parts.ts';
import { placeOf, pointOf } from './wall-in-space.ts';

/** Angle of view from top to bottom, degrees: narrow, so that lip and foot keep their sizes nearly. */
const viewAngle = 20;
/** Room around the vessel: its own size times this fits the window. */
const room = 1.12;
const markColour = '#e0561d';
/** Size of a place's mark, as a share of the vessel's height. */
const markSize = 0.014;
/** What a turning sequence is seen on; a picture of one moment stays clear around the vessel. */
const paper = '#faf7ef';

/** Of each frame this goes into taking up film, ms: half of one is left for what the maker types. */
const shareOfFrame = 8;

const nextFrame = (): Promise<unknown> => new Promise((resolve) => requestAnimationFrame(resolve));

/** A vessel on a canvas. `end` gives back all that the graphics hold. */
export class VesselScene {
  readonly #renderer: WebGLRenderer;
  readonly #scene = new Scene();
  readonly #camera = new PerspectiveCamera(viewAngle);
  readonly #light = new DirectionalLight('#ffffff', 2.2);
  readonly #canvas: HTMLCanvasElement;
  readonly #mark = new Mesh(new SphereGeometry(1, 20, 12), new MeshBasicMaterial({ color: markColour }));
  readonly #drag = new DragMarks(markColour);
  readonly #ray = new Raycaster();
  /** The vessel as it stands: turned over, where it stands on its lip. All of it is told from the foot up. */
  readonly #stood = new Group();
  #parts: VesselParts | undefined;
  /** What is shown next, while the screen takes it up. */
  #coming: VesselParts | undefined;
  /** What was shown before, until the next has been drawn: with it would go what the next is drawn with too. */
  #former: VesselParts | undefined;
  #size: Pick<SolidSeen, 'height' | 'radius' | 'rings' | 'standsOnLip'> = {
    height: 100,
    radius: 40,
    rings: [],
  };

  /** @throws Error where the browser gives no WebGL. */
  constructor(canvas: HTMLCanvasElement) {
    this.#canvas = canvas;
    this.#renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
    this.#scene.add(new HemisphereLight('#ffffff', '#8d8676', 1.7), this.#light, this.#stood);
    this.#stood.add(this.#mark, this.#drag.group);
    this.#mark.visible = false;
  }

  /**
   * Show a vessel in place of the one before, once the screen has taken up its film, a little a frame: until then that one stays. It is to be
   * dressed before it is drawn. False where another came meanwhile.
   */
  async show(view: SolidSeen): Promise<boolean> {
    const parts = new VesselParts(view, this.#renderer.capabilities.getMaxAnisotropy());
    this.#coming?.end();
    this.#coming = parts;
    let since = performance.now();
    for (const _ of parts.takenUp(this.#renderer)) {
      if (performance.now() - since < shareOfFrame) continue;
      await nextFrame();
      since = performance.now();
      if (this.#coming !== parts) return false;
    }
    this.#coming = undefined;
    this.#letGo();
    this.#size = view;
    this.#parts = parts;
    this.#stood.add(parts.group);
    this.#stood.rotation.x = view.standsOnLip ? Math.PI : 0;
    this.#stood.position.y = view.standsOnLip ? view.height : 0;
    return true;
  }

  dress(looks: Looks): void {
    this.#parts?.dress(looks);
  }

  /** Draw it from a side, as large as the canvas is on the page. */
  draw(from: Side): void {
    const { clientWidth: width, clientHeight: height } = this.#canvas;
    if (width === 0 || height === 0) return;
    this.#renderer.setPixelRatio(globalThis.devicePixelRatio || 1);
    this.#drawAt(from, { width, height });
  }

  #drawAt({ facing, elevation, zoom }: Side, { width, height }: Size): void {
    this.#renderer.setSize(width, height, false);
    const { height: tall, radius, standsOnLip } = this.#size;
    const half = Math.hypot(tall / 2, radius);
    const aspect = width / height;
    const angle = (viewAngle * Math.PI) / 360;
    const reach = (half * room) / Math.sin(Math.min(angle, Math.atan(Math.tan(angle) * aspect)));
    // Turned over, turns run the other way around, and the front is where the seam was.
    const around = standsOnLip ? Math.PI - 2 * Math.PI * facing : 2 * Math.PI * facing;
    const level = Math.cos(elevation);
    this.#camera.position.set(
      reach * level * Math.sin(around),
      tall / 2 + reach * Math.sin(elevation),
      reach * level * Math.cos(around),
    );
    this.#camera.lookAt(0, tall / 2, 0);
    Object.assign(this.#camera, { aspect, zoom, near: reach - 2 * half, far: reach + 2 * half });
    this.#camera.updateProjectionMatrix();
    // The light goes with the eye, from over its left shoulder: turning shows the vessel, not its dark side.
    this.#light.position.set(-0.6, 0.7, 1).applyQuaternion(this.#camera.quaternion);
    this.#renderer.render(this.#scene, this.#camera);
    this.#former?.end();
    this.#former = undefined;
  }

  /** Mark a place of the wall; none without one. */
  mark(place: WallPlace | undefined): void {
    const at = place && pointOf(this.#size.rings, place);
    this.#mark.visible = at !== undefined;
    if (!at) return;
    this.#mark.position.set(at.x, at.y, at.z);
    this.#mark.scale.setScalar(markSize * this.#size.height);
  }

  /** Show the frame of a dragged motif and the levels that its middle stays between; none without one. */
  limits(held: Dragged | undefined): void {
    this.#drag.show(held, this.#size.rings, this.#size.height);
  }

  /** The place of the wall under a point of the canvas, px; undefined beside the wall. */
  placeAt({ x, y }: Point): WallPlace | undefined {
    const { clientWidth: width, clientHeight: height } = this.#canvas;
    if (!this.#parts) return undefined;
    this.#ray.setFromCamera(new Vector2((2 * x) / width - 1, 1 - (2 * y) / height), this.#camera);
    const [hit] = this.#ray.intersectObject(this.#parts.group, true);
    return hit && placeOf(this.#size.rings, this.#stood.worldToLocal(hit.point));
  }

  /** What it draws from a side, as a PNG. */
  picture(from: Side): Promise<Uint8Array> {
    this.draw(from);
    return new Promise((resolve, reject) => {
      // The canvas is emptied once the browser has shown it, so it is read at once.
      this.#canvas.toBlob((blob) => {
        if (!blob) reject(new Error('the browser made no picture of the vessel; try a smaller window'));
        else void blob.arrayBuffer().then((bytes) => resolve(new Uint8Array(bytes)));
      }, 'image/png');
    });
  }

  /** What it draws from a side at a size of its own, on paper: dots as red, green, blue and cover, row by row. */
  dots(from: Side, { width, height }: Size): Uint8ClampedArray<ArrayBuffer> {
    this.#renderer.setPixelRatio(1);
    this.#drawAt(from, { width, height });
    const flat = document.createElement('canvas');
    Object.assign(flat, { width, height });
    const ink = flat.getContext('2d', { willReadFrequently: true });
    if (!ink)
      throw new Error('the browser gave no canvas for the turning picture; close other pages and try again');
    ink.fillStyle = paper;
    ink.fillRect(0, 0, width, height);
    ink.drawImage(this.#canvas, 0, 0);
    return ink.getImageData(0, 0, width, height).data;
  }

  end(): void {
    this.#letGo();
    this.#former?.end();
    this.#coming?.end();
    this.#coming = undefined;
    this.#mark.geometry.dispose();
    this.#mark.material.dispose();
    this.#drag.end();
    this.#renderer.dispose();
  }

  #letGo(): void {
    if (!this.#parts) return;
    this.#stood.remove(this.#parts.group);
    this.#former?.end();
    this.#former = this.#parts;
    this.#parts = undefined;
  }
}
