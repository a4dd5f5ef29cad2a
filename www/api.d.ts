/**
 * The functions that the module `holdround_web.js` exports besides its loader (the default export, to be
 * awaited first). Values of findings are in SI with the unit beside them.
 *
 *     import load, { evaluate } from "./holdround_web.js";
 *     await load();
 *     const { findings } = evaluate({ schema: 1, part: { length: "30 mm" } });
 */

/** Loads the module; to be awaited before anything else is called. */
export default function load(module?: unknown): Promise<unknown>;

/** A quantity as text with its unit ("30 mm", "2 1/4 in"), or a bare number in the unit that the JSON Schema names. */
export type Entry = string | number | null;

/** One item of a list: entries by field. */
export type Item = { [field: string]: Entry };

/** A set-up. What is absent takes its default. Its JSON Schema, printed by the example `schema` of the crate `holdround-core`, lists every entry. */
export interface Setup {
  schema: 1;
  job?: Item;
  part?: Item;
  grip?: Item;
  chuck?: Item;
  cylinder?: Item;
  chart?: Item;
  gauge?: Item[];
  jaws?: Item;
  run?: Item;
  cuts?: Item[];
}

/** One fault of a set-up. */
export interface Fault {
  /** The entry: "part.length"; "set-up" for the document as a whole. */
  path: string;
  /** Its name as shown. */
  name: string;
  /** What was given. */
  value: string;
  /** What is allowed. */
  allowed: string;
  /** What to do. */
  remedy: string;
}

/** What `evaluate` throws for a set-up that is not valid. */
export interface Refusal extends Error {
  faults: Fault[];
}

/** A symbol with its value. */
export interface Term {
  symbol: string;
  value: number;
  unit: string;
}

/** One step of a calculation. */
export interface Step {
  says: string;
  formula: string;
  given: Term[];
  result: Term;
  source: string;
}

/** One result. */
export interface Finding {
  /** "hold.factor", "shape.roundness", "shape.runout", "speed.set", "pressure.set", "grip.rest", and more. */
  id: string;
  name: string;
  /** The value in `unit`; null when it is refused. */
  value: number | null;
  unit: string;
  /** Why there is no value. */
  refused: string | null;
  /** Least and greatest value where the model gives a band. */
  band: [number, number] | null;
  limit: { value: number; sense: "at_most" | "at_least"; origin: string } | null;
  /** What is left to the limit, as a share of it; negative beyond it. */
  margin: number | null;
  mark: "within" | "close" | "beyond" | "told" | "refused";
  caution: string | null;
  /** The entry that moves it most directly. */
  entry: string | null;
  steps: Step[];
}

/** Something to be heeded. */
export interface Caution {
  weight: "stop" | "model" | "standing";
  says: string;
  entry: string | null;
}

/** An input whose default was taken. */
export interface Assumption {
  entry: string;
  name: string;
  taken: string;
  source: string;
}

/** A surface's radial departure from its true circle, m; jaw 1 stands at angle 0. */
export interface Wave {
  mean: number;
  /** Order and amplitude of each cosine. */
  harmonics: [number, number][];
}

/** The released profile that the headline of roundness judges. */
export interface Trace {
  surface: string;
  radius: number;
  released: Wave;
  /** Least squares, minimum zone, minimum circumscribed, maximum inscribed. */
  circles: TraceCircle[];
}

/** One reference circle of a trace, m; its radius is told less that of the surface. */
export interface TraceCircle {
  name: string;
  x: number;
  y: number;
  radius: number;
  roundness: number;
}

/** What a diagram draws, in SI. */
export interface Scene {
  contact_half_angle: number;
  jaw_inner_radius: number;
  jaw_outer_radius: number;
  swing_radius: number;
  jaw_grip_at_rest: number;
  jaw_grip_at_speed: number;
  contact_pressure: number;
  clamped_outside: Wave;
  clamped_bore: Wave;
  shape_share_at_speed: number;
  trace: Trace | null;
}

/** Everything computed from a set-up. */
export interface Findings {
  job: string;
  findings: Finding[];
  cautions: Caution[];
  assumed: Assumption[];
  scene: Scene;
}

/** A worked example. */
export interface Example {
  id: string;
  title: string;
  /** What there is to see in it. */
  says: string;
  setup: Setup;
}

/** The findings of a set-up, given as an object or as JSON text. Throws a {@link Refusal}. */
export function evaluate(setup: Setup | string): Findings;

/** Every fault of a set-up; empty when it is valid. Never throws. */
export function validate(setup: unknown): Fault[];

/** The worked examples. */
export function examples(): Example[];

