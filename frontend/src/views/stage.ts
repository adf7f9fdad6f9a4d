/** The stage: a piece off the loom, lit and turned. It draws when it is asked to, and at no other time.
 * Loaded only when there is something to show. */
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  CylinderGeometry,
  DirectionalLight,
  HemisphereLight,
  Mesh,
  MeshStandardMaterial,
  PerspectiveCamera,
  Raycaster,
  Scene,
  SRGBColorSpace,
  Vector2,
  WebGLRenderer,
} from "three";
import { tube } from "../kernels/tube";
import { bendRound, flatOf, wornRadius, type Flat } from "../kernels/wrist";
import type { Strand } from "../schema/answers";

export type Rgb = readonly [number, number, number];
/** The tint of a strand at its point `i`. */
export type Tint = (strand: Strand, i: number) => Rgb;

export interface Gaze {
  /** Radians round the upright, and above the table. */
  turn: number;
  tilt: number;
  /** How many times nearer than the whole piece asks for. */
  zoom: number;
}

const FIELD_DEG = 30;
const MOST_CORNERS = 400_000;
const WIDE: Record<number, readonly [number, number]> = { 0: [10, 3], 1: [8, 2], 2: [6, 1] };

export class Stage {
  readonly #renderer: WebGLRenderer;
  readonly #scene = new Scene();
  readonly #camera = new PerspectiveCamera(FIELD_DEG, 1, 1, 4000);
  readonly #skin = new MeshStandardMaterial({ vertexColors: true, roughness: 0.55 });
  readonly #arm = new MeshStandardMaterial({ color: "#e9dfcd", roughness: 0.95 });
  #piece: Mesh | null = null;
  #wrist: Mesh | null = null;
  #strands: readonly Strand[] = [];
  /** First corner of each strand, and for every ring where along the strand it lies. */
  #starts: number[] = [];
  #along: Float32Array[] = [];
  #sides = 8;
  #reach = 50;
  #size: readonly [number, number, number] = [1, 1, 1];

  /** Raises where the browser draws nothing in three dimensions. */
  constructor(canvas: HTMLCanvasElement) {
    this.#renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, powerPreference: "low-power" });
    this.#renderer.outputColorSpace = SRGBColorSpace;
    this.#scene.add(new HemisphereLight("#ffffff", "#b9ad97", 2.2));
    const sun = new DirectionalLight("#ffffff", 2);
    sun.position.set(0.4, 0.9, 1);
    this.#camera.add(sun); // the light comes over the maker's shoulder
    this.#scene.add(this.#camera);
  }

  /** Put a piece on the stage: flat on the table, or bent round a wrist of that girth in mm. */
  show(strands: readonly Strand[], girth: number | null): void {
    const flat = flatOf(strands.map((strand) => strand.points_mm));
    const lie = (strand: Strand) => (girth === null ? strand.points_mm : bendRound(strand.points_mm, flat, girth, strand.radius_mm));
    this.#put(strands, lie, flat, girth);
  }

  /** Put a piece on the stage that lies round a wrist of that girth; `laid` are its strands lying flat.
   * Its ends meet where z is greatest; half a turn brings its middle to the front, as when it is bent. */
  showWorn(strands: readonly Strand[], laid: readonly Strand[], girth: number): void {
    this.#put(strands, (strand) => strand.points_mm.map((v, i) => (i % 3 === 1 ? v : -v)), flatOf(laid.map((strand) => strand.points_mm)), girth);
  }

  #put(strands: readonly Strand[], lie: (strand: Strand) => readonly number[], flat: Flat, girth: number | null): void {
    this.#clear();
    const points = strands.reduce((sum, strand) => sum + strand.points_mm.length / 3, 0);
    const detail = [0, 1, 2].find((k) => points * WIDE[k]![0] * WIDE[k]![1] <= MOST_CORNERS) ?? 2;
    const [sides, parts] = WIDE[detail]!;
    const tubes = strands.map((strand) =>
      tube(lie(strand), strand.closed, strand.radius_mm, sides, parts),
    );
    const geometry = new BufferGeometry();
    const corners = tubes.reduce((sum, each) => sum + each.positions.length, 0);
    const triangles = tubes.reduce((sum, each) => sum + each.index.length, 0);
    const [positions, normals, index] = [new Float32Array(corners), new Float32Array(corners), new Uint32Array(triangles)];
    let [at, written] = [0, 0];
    this.#starts = [];
    for (const each of tubes) {
      this.#starts.push(at / 3);
      positions.set(each.positions, at);
      normals.set(each.normals, at);
      for (let k = 0; k < each.index.length; k++) index[written + k] = each.index[k]! + at / 3;
      written += each.index.length;
      at += each.positions.length;
    }
    geometry.setAttribute("position", new BufferAttribute(positions, 3));
    geometry.setAttribute("normal", new BufferAttribute(normals, 3));
    geometry.setAttribute("color", new BufferAttribute(new Float32Array(corners), 3));
    geometry.setIndex(new BufferAttribute(index, 1));
    this.#along = tubes.map((each) => each.along);
    this.#sides = sides;
    this.#strands = strands;
    this.#piece = new Mesh(geometry, this.#skin);
    this.#scene.add(this.#piece);
    geometry.computeBoundingBox();
    const box = geometry.boundingBox!;
    this.#size = [box.max.x - box.min.x, box.max.y - box.min.y, box.max.z - box.min.z];
    if (girth !== null) {
      const radius = girth / (2 * Math.PI);
      this.#wrist = new Mesh(new CylinderGeometry(radius, radius * 1.04, wornRadius(flat, girth) * 5, 64, 1, true), this.#arm);
      this.#scene.add(this.#wrist);
    }
    this.#reach = Math.hypot(...this.#size) / 2;
  }

  tint(tint: Tint): void {
    const color = this.#piece?.geometry.getAttribute("color") as BufferAttribute | undefined;
    if (!color) return;
    const one = new Color();
    this.#strands.forEach((strand, s) => {
      const points = strand.tension_n.length;
      this.#along[s]!.forEach((along, ring) => {
        one.setRGB(...tint(strand, Math.floor(along) % points), SRGBColorSpace);
        for (let k = 0; k < this.#sides; k++) color.setXYZ(this.#starts[s]! + ring * this.#sides + k, one.r, one.g, one.b);
      });
    });
    color.needsUpdate = true;
  }

  draw(gaze: Gaze, width: number, height: number): void {
    if (width < 2 || height < 2) return;
    const ratio = Math.min(window.devicePixelRatio, 2);
    this.#renderer.setPixelRatio(ratio);
    this.#renderer.setSize(width, height, false);
    this.#camera.aspect = width / height;
    const half = Math.tan((FIELD_DEG * Math.PI) / 360);
    // Flat, a piece is far longer than deep: it is fitted by its length and its width, not by a ball round it.
    const [long, wide, deep] = this.#size;
    const across = (Math.abs(Math.cos(gaze.turn)) * long + Math.abs(Math.sin(gaze.turn)) * deep) / 2 + 3;
    const upward = (Math.abs(Math.cos(gaze.tilt)) * wide + Math.abs(Math.sin(gaze.tilt)) * Math.max(deep, long * Math.abs(Math.sin(gaze.turn)))) / 2 + 3;
    const far = (Math.max(across / this.#camera.aspect, upward) / half + this.#reach * 0.3) / gaze.zoom;
    this.#camera.position.set(
      far * Math.cos(gaze.tilt) * Math.sin(gaze.turn),
      far * Math.sin(gaze.tilt),
      far * Math.cos(gaze.tilt) * Math.cos(gaze.turn),
    );
    this.#camera.near = Math.max(0.5, far - 3 * this.#reach);
    this.#camera.far = far + 6 * this.#reach;
    this.#camera.lookAt(0, 0, 0);
    this.#camera.updateProjectionMatrix();
    this.#renderer.render(this.#scene, this.#camera);
  }

  /** The band that is seen there; x and y run from -1 to 1, to the right and upward. */
  bandAt(x: number, y: number): number | null {
    if (!this.#piece) return null;
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2(x, y), this.#camera);
    const hit = ray.intersectObjects(this.#wrist ? [this.#piece, this.#wrist] : [this.#piece])[0];
    if (!hit?.face || hit.object !== this.#piece) return null;
    let s = this.#starts.length - 1;
    while (s > 0 && this.#starts[s]! > hit.face.a) s--;
    return this.#strands[s]?.band || null;
  }

  dispose(): void {
    this.#clear();
    this.#skin.dispose();
    this.#arm.dispose();
    this.#renderer.dispose();
    this.#renderer.forceContextLoss();
  }

  #clear(): void {
    for (const mesh of [this.#piece, this.#wrist]) {
      if (!mesh) continue;
      this.#scene.remove(mesh);
      mesh.geometry.dispose();
    }
    this.#piece = this.#wrist = null;
  }
}
