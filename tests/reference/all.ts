import * as atmosphere from './atmosphere.ts';
import * as circuit from './circuit.ts';
import * as engine from './engine.ts';
import * as ground from './ground.ts';
import * as longitudinal from './longitudinal.ts';
import type { Reference } from './reference.ts';
import * as slopeLights from './slope-lights.ts';
import * as turns from './turns.ts';
import * as wind from './wind.ts';

const FILES: Readonly<Record<string, object>> = {
  atmosphere,
  circuit,
  engine,
  ground,
  longitudinal,
  slopeLights,
  turns,
  wind,
};

const isReference = (value: unknown): value is Reference =>
  typeof value === 'object' && value !== null && 'certainty' in value;

/** Every reference with its name: what checks their shape, and what says how sure a source is. */
export const REFERENCES: readonly (readonly [string, Reference])[] = Object.values(FILES).flatMap((file) =>
  Object.entries(file).flatMap(([name, value]) => (isReference(value) ? [[name, value] as const] : [])),
);
