// The finished vessel in 3D. Loaded when it is first looked at, for its library is larger than the rest of the page.
import {
  BufferAttribute,
  BufferGeometry,
  CanvasTexture,
  DirectionalLight,
  Group,
  HemisphereLight,
  Mesh,
  MeshBasicMaterial,
  MeshStandardMaterial,
  PerspectiveCamera,
  Raycaster,
  Scene,
  SphereGeometry,
  SRGBColorSpace,
  Vector2,
  WebGLRenderer,
} from 'three';
import type { VesselView } from '../../job/vessel-view.ts';
import type { Point } from '../board/sheet-view.ts';
import type { WallPlace } from '../store.ts';
import { filmCanvas } from './film-texture.ts';
import type { Looks, Side } from './looks.ts';
import { placeOf, pointOf } from './wall-in-space.ts';

type Surface = VesselView['body'];

/** Angle of view from top to bottom, degrees: narrow, so that lip and foot keep their sizes nearly. */
const viewAngle = 20;
/** Room around the vessel: its own size times this fits the window. */
const room = 1.12;
const markColour = '#e0561d';
/** Size of a place's mark, as a share of the vessel's height. */
const markSize = 0.014;
const seamColour = '#8a2f6b';
/** One sheen for everything: between a film and its ground nothing but colour is known. */
const roughness = 0.6;

/** A vessel on a canvas. `end` gives back all that the graphics hold. */
export class VesselScene {
  readonly #renderer: WebGLRenderer;
  readonly #scene = new Scene();
  readonly #camera = new PerspectiveCamera(viewAngle);
  readonly #light = new DirectionalLight('#ffffff', 2.2);
  readonly #canvas: HTMLCanvasElement;
  readonly #mark = new Mesh(new SphereGeometry(1, 20, 12), new MeshBasicMaterial({ color: markColour }));
  readonly #ray = new Raycaster();
  #vessel = new Group();
  #size: Pick<VesselView, 'height' | 'radius' | 'rings'> = { height: 100, radius: 40, rings: [] };

  /** @throws Error where the browser gives no WebGL. */
  constructor(canvas: HTMLCanvasElement) {
    this.#canvas = canvas;
    this.#renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
    this.#scene.add(new HemisphereLight('#ffffff', '#8d8676', 1.7), this.#light, this.#vessel, this.#mark);
    this.#mark.visible = false;
  }

  /** Show a vessel, in place of the one before. */
  show(view: VesselView, looks: Looks): void {
    this.#letGo();
    this.#size = view;
    const body = new MeshStandardMaterial({ color: looks.blank, roughness, ...behind(2) });
    const coat = new MeshStandardMaterial({ color: looks.coat, roughness, ...behind(1) });
    this.#vessel.add(new Mesh(geometryOf(view.body), body));
    for (const surface of view.coats) this.#vessel.add(new Mesh(geometryOf(surface), coat));
    this.#vessel.add(this.#sheetOf(view, looks));
    if (view.seam && looks.isSeamShown)
      this.#vessel.add(
        new Mesh(geometryOf(view.seam), new MeshStandardMaterial({ color: seamColour, roughness: 1 })),
      );
  }

  #sheetOf(view: VesselView, looks: Looks): Mesh {
    const geometry = geometryOf(view.sheet);
    geometry.setAttribute('uv', new BufferAttribute(view.sheet.places, 2));
    const map = new CanvasTexture(filmCanvas(view, looks, this.#renderer.capabilities.maxTextureSize));
    // The places run down the sheet, as the canvas does.
    map.flipY = false;
    map.colorSpace = SRGBColorSpace;
    map.anisotropy = this.#renderer.capabilities.getMaxAnisotropy();
    return new Mesh(geometry, new MeshStandardMaterial({ map, roughness }));
  }

  /** Draw it from a side, as large as the canvas is on the page. */
  draw({ facing, elevation, zoom }: Side): void {
    const { clientWidth: width, clientHeight: height } = this.#canvas;
    if (width === 0 || height === 0) return;
    this.#renderer.setPixelRatio(globalThis.devicePixelRatio || 1);
    this.#renderer.setSize(width, height, false);
    const { height: tall, radius } = this.#size;
    const half = Math.hypot(tall / 2, radius);
    const aspect = width / height;
    const angle = (viewAngle * Math.PI) / 360;
    const reach = (half * room) / Math.sin(Math.min(angle, Math.atan(Math.tan(angle) * aspect)));
    const around = 2 * Math.PI * facing;
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
  }

  /** Mark a place of the wall; none without one. */
  mark(place: WallPlace | undefined): void {
    const at = place && pointOf(this.#size.rings, place);
    this.#mark.visible = at !== undefined;
    if (!at) return;
    this.#mark.position.set(at.x, at.y, at.z);
    this.#mark.scale.setScalar(markSize * this.#size.height);
  }

  /** The place of the wall under a point of the canvas, px; undefined beside the wall. */
  placeAt({ x, y }: Point): WallPlace | undefined {
    const { clientWidth: width, clientHeight: height } = this.#canvas;
    this.#ray.setFromCamera(new Vector2((2 * x) / width - 1, 1 - (2 * y) / height), this.#camera);
    const [hit] = this.#ray.intersectObjects(this.#vessel.children, false);
    return hit && placeOf(this.#size.rings, hit.point);
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

  end(): void {
    this.#letGo();
    this.#mark.geometry.dispose();
    this.#mark.material.dispose();
    this.#renderer.dispose();
  }

  #letGo(): void {
    for (const part of this.#vessel.children) {
      if (!(part instanceof Mesh)) continue;
      part.geometry.dispose();
      const { material } = part;
      if (!(material instanceof MeshStandardMaterial)) continue;
      material.map?.dispose();
      material.dispose();
    }
    this.#vessel.clear();
  }
}

/** Surfaces in the same place: one with more of this is hidden by one with less. */
const behind = (steps: number) => ({
  polygonOffset: true,
  polygonOffsetFactor: steps,
  polygonOffsetUnits: steps,
});

function geometryOf({ positions, normals, triangles }: Surface): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(normals, 3));
  geometry.setIndex(new BufferAttribute(triangles, 1));
  return geometry;
}
