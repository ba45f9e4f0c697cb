import type { Controls } from '../simulation/controls.ts';
import type { Scenario } from '../simulation/scenario.ts';
import type { ByModelPilot } from '../study/by-model-pilot.ts';
import type { Fan, FanBlade } from '../study/fan.ts';
import type { StudyFlight } from '../study/flown.ts';
import type { RootProgress, RootResult } from '../study/root/result.ts';
import type { TrailPiece, TrailProgress } from '../study/trail.ts';

/** What a worker of the study can be asked for; everything in it is plain data. */
export type StudyTask =
  | { readonly task: 'root'; readonly flight: StudyFlight; readonly circuit: number | null }
  | { readonly task: 'trail'; readonly flight: StudyFlight; readonly circuit: number | null }
  | { readonly task: 'model-pilot'; readonly flight: StudyFlight; readonly fromS: number | null }
  | {
      readonly task: 'fan';
      readonly scenario: Scenario;
      readonly state: Float64Array;
      readonly controls: Controls;
      readonly blades: readonly FanBlade[] | null;
      readonly seconds: number;
    };

/** What comes of each task. */
export interface StudyResults {
  readonly root: RootResult;
  readonly trail: readonly TrailPiece[];
  readonly 'model-pilot': ByModelPilot;
  readonly fan: readonly Fan[];
}
export type TaskName = keyof StudyResults;

/** How far a task is; the search for the root says what it is trying and the best so far. */
export type StudyProgress = RootProgress | TrailProgress;

/** To the worker: a task with an id of the asker's choice, or that a task is no longer wanted. */
export type ToStudy =
  | { readonly id: number; readonly ask: StudyTask }
  | { readonly id: number; readonly cancel: true };

/** From the worker; after `done`, `failed` or `cancelled` nothing more comes with this id. */
export type FromStudy =
  | { readonly id: number; readonly kind: 'progress'; readonly progress: StudyProgress }
  | { readonly id: number; readonly kind: 'done'; readonly result: StudyResults[TaskName] }
  | { readonly id: number; readonly kind: 'failed'; readonly why: string }
  | { readonly id: number; readonly kind: 'cancelled' };
