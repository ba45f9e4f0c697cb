import { acrossM, alongM } from '../../../aerodrome/runway.ts';
import type { Snapshot } from '../../../simulation/snapshot.ts';
import { degFromRad, radFromDeg } from '../../../units/conversions.ts';
import type { Stage } from '../../../views/frame.ts';
import { PALETTES, type Palette } from '../../../views/palette.ts';
import type { ScaleSetting } from '../../../views/scales/scale.ts';
import { fetchPart, PartMissing } from '../../parts/fetch-part.ts';
import { themeNow } from '../../shown/theme.ts';
import { useStore } from '../../store.ts';
import type { ReadyFlight } from '../run/ready.ts';
import { goesAhead, lookForLeg } from './look.ts';
import { viewRects } from './rects.ts';

export interface DrawingEvents {
  onLost(): void;
}

/** After something changed while frozen the cameras need this long to come to rest. */
const AWAKE_MS = 1500;
/** The head turns this fast. */
const HEAD_RADPS = radFromDeg(360);

const NOT_DRAWN =
  'Plan, profile and window could not be drawn and stay empty; scales, card and levers still work.';

const NOT_LOADED =
  'The drawing did not load, so plan, profile and window stay empty; scales, card and levers still work.';

/** How far behind the wing the threshold lies, seen from the aeroplane on downwind. */
const behindWingRad = (flight: ReadyFlight, s: Readonly<Snapshot>): number => {
  const { runway } = flight.model;
  return Math.atan2(-alongM(runway, s.eastM, s.northM), Math.abs(acrossM(runway, s.eastM, s.northM)));
};

/**
 * The stage under the page: loaded on its own, given the places of the panels, drawn while something moves.
 * Where nothing can be drawn everything else goes on.
 */
export const createDrawing = (canvas: HTMLCanvasElement, events: DrawingEvents) => {
  let stage: Stage | null = null;
  let destroyed = false;
  let setting: ScaleSetting | null = null;
  let dirty = true;
  let awakeUntilMs = 0;
  let lookRad = 0;
  let lastMs = 0;
  let looking = '';
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches;

  const wake = () => {
    awakeUntilMs = performance.now() + AWAKE_MS;
  };
  const relayout = () => {
    dirty = true;
    wake();
  };
  const resized = new ResizeObserver(relayout);
  resized.observe(canvas);
  const unsubscribe = useStore.subscribe((now, before) => {
    if (
      now.settings.picture !== before.settings.picture ||
      now.planHeld !== before.planHeld ||
      now.sheet !== before.sheet ||
      now.headline !== before.headline
    )
      relayout();
    if (now.settings.planMode !== before.settings.planMode || now.look !== before.look) wake();
  });

  const load = async () => {
    const { createStage } = await fetchPart('views/stage.ts', () => import('../../../views/stage.ts'));
    const made = await createStage(canvas, PALETTES[themeNow()], {
      stillCameras: still,
      onLost: () => {
        useStore.setState({ graphics: 'lost' });
        events.onLost();
      },
      onRestored: () => {
        useStore.setState({ graphics: 'drawn' });
        relayout();
      },
    });
    if (destroyed) {
      made.destroy();
      return;
    }
    stage = made;
    useStore.setState({ graphics: 'drawn' });
    relayout();
  };
  load().catch((error: unknown) => {
    const why =
      error instanceof PartMissing
        ? NOT_LOADED
        : error instanceof Error && error.message.includes('WebGL')
          ? error.message
          : NOT_DRAWN;
    useStore.setState({ graphics: 'none', graphicsWhy: why });
  });

  const turnHead = (flight: ReadyFlight, shown: Readonly<Snapshot>, leg: string, nowMs: number) => {
    const { look, emergency } = useStore.getState();
    const wantedDeg =
      look === 'leg'
        ? lookForLeg(
            goesAhead(emergency) || emergency === 'go-around' ? 'ahead' : leg,
            flight.plan.side,
            behindWingRad(flight, shown),
          )
        : look;
    const wantedRad = radFromDeg(wantedDeg);
    const mostRad = still ? Number.POSITIVE_INFINITY : (HEAD_RADPS * Math.min(100, nowMs - lastMs)) / 1000;
    const leftRad = wantedRad - lookRad;
    lookRad = Math.abs(leftRad) <= mostRad ? wantedRad : lookRad + Math.sign(leftRad) * mostRad;
    if (lookRad !== wantedRad) wake();
    return wantedDeg;
  };

  /** A view that fails must not take the flight with it: the page goes on without drawing. */
  const giveUp = (error: unknown) => {
    console.error(error);
    stage?.destroy();
    stage = null;
    useStore.setState({
      graphics: 'none',
      graphicsWhy:
        'The drawing failed, so plan, profile and window stay empty; scales, card and levers still work.',
    });
  };

  return {
    get setting() {
      return setting;
    },
    show: (flight: ReadyFlight) => {
      setting = {
        aeroplane: flight.scenario.aeroplane,
        runway: flight.model.runway,
        weather: flight.scenario.weather,
      };
      relayout();
    },
    /** Draws when something moves or has just changed. */
    draw: (flight: ReadyFlight, shown: Snapshot, leg: string, running: boolean, nowMs: number) => {
      const wantedDeg = turnHead(flight, shown, leg, nowMs);
      lastMs = nowMs;
      const words = wantedDeg === 0 ? 'ahead' : `${Math.abs(wantedDeg)}° ${wantedDeg < 0 ? 'left' : 'right'}`;
      if (words !== looking) {
        looking = words;
        useStore.setState({ looking: words });
      }
      if (!stage || stage.lost || (!running && nowMs > awakeUntilMs)) return;
      if (dirty) {
        dirty = false;
        stage.layout(viewRects(canvas));
      }
      const { frame } = flight;
      const { settings } = useStore.getState();
      frame.snapshot = shown;
      frame.leg = leg;
      frame.lookRad = lookRad;
      frame.picture = settings.picture === 'whiteboard' ? 'whiteboard' : 'cockpit';
      frame.planMode = settings.planMode;
      try {
        stage.draw(frame);
      } catch (error) {
        giveUp(error);
      }
    },
    lookingDeg: () => Math.round(degFromRad(lookRad)),
    setPalette: (palette: Palette) => {
      stage?.setPalette(palette);
      wake();
    },
    wake,
    jump: wake,
    destroy: () => {
      destroyed = true;
      unsubscribe();
      resized.disconnect();
      stage?.destroy();
    },
  };
};

export type Drawing = ReturnType<typeof createDrawing>;
