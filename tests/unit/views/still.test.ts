import { describe, expect, it } from 'vitest';
import type { Colours } from '../../../src/views/pen/colours.ts';
import type { Layer } from '../../../src/views/pen/layer.ts';
import { PlanCamera } from '../../../src/views/plan/camera.ts';
import { StillPicture } from '../../../src/views/plan/still.ts';

const COLOURS = {} as Colours;
const PLAN = {};

/** A layer that only keeps where it was put. */
const newLayer = () => {
  const at = { x: 0, y: 0, scale: 1 };
  const container = {
    rotation: 0,
    scale: {
      set: (scale: number) => {
        at.scale = scale;
      },
    },
    position: {
      set: (x: number, y: number) => {
        at.x = x;
        at.y = y;
      },
    },
  };
  /** Where a pixel that was drawn lies now: turned, scaled, moved, as pixi's containers are. */
  const carried = (px: Float64Array): [number, number] => {
    const sin = Math.sin(container.rotation) * at.scale;
    const cos = Math.cos(container.rotation) * at.scale;
    return [at.x + cos * px[0]! - sin * px[1]!, at.y + sin * px[0]! + cos * px[1]!];
  };
  return { layer: { container } as unknown as Layer, carried };
};

const newCamera = (): PlanCamera => {
  const camera = new PlanCamera();
  camera.turn(0.7);
  camera.pxPerM = 0.1;
  camera.rightM = -400;
  camera.aheadM = 900;
  camera.middleX = 300;
  camera.middleY = 200;
  return camera;
};

const PLACES = [
  { eastM: 0, northM: 0 },
  { eastM: 1500, northM: -2300 },
  { eastM: -800, northM: 1200 },
];

describe('what stands still of the plan', () => {
  it('lies where the camera looks, moved with its layer instead of drawn anew', () => {
    const still = new StillPicture();
    const { layer, carried } = newLayer();
    const camera = newCamera();
    expect(still.follow(camera, layer, COLOURS, PLAN, '')).toBe(true);
    const drawn = PLACES.map((place) => {
      camera.place(place);
      return camera.px.slice();
    });
    camera.turn(0.705);
    camera.pxPerM = 0.1008;
    camera.rightM = -390;
    camera.aheadM = 880;
    camera.middleX = 303;
    expect(still.follow(camera, layer, COLOURS, PLAN, '')).toBe(false);
    for (const [i, place] of PLACES.entries()) {
      camera.place(place);
      const [x, y] = carried(drawn[i] as Float64Array);
      expect(x).toBeCloseTo(camera.px[0]!, 6);
      expect(y).toBeCloseTo(camera.px[1]!, 6);
    }
  });

  it('is drawn anew once it would be larger by more than a hundredth, or shows something else', () => {
    const still = new StillPicture();
    const { layer } = newLayer();
    const camera = newCamera();
    still.follow(camera, layer, COLOURS, PLAN, 'downwind');
    expect(still.follow(camera, layer, COLOURS, PLAN, 'downwind')).toBe(false);
    expect(still.follow(camera, layer, COLOURS, PLAN, 'base')).toBe(true);
    expect(still.follow(camera, layer, COLOURS, {}, 'base')).toBe(true);
    expect(still.follow(camera, layer, { ...COLOURS }, PLAN, 'base')).toBe(true);
    still.follow(camera, layer, COLOURS, PLAN, 'base');
    camera.pxPerM *= 1.02;
    expect(still.follow(camera, layer, COLOURS, PLAN, 'base')).toBe(true);
  });

  it('is drawn once more, sharp, when the camera has come to rest', () => {
    const still = new StillPicture();
    const { layer } = newLayer();
    const camera = newCamera();
    still.follow(camera, layer, COLOURS, PLAN, '');
    camera.rightM += 20;
    expect(still.follow(camera, layer, COLOURS, PLAN, '')).toBe(false);
    expect(still.follow(camera, layer, COLOURS, PLAN, '')).toBe(true);
    expect(still.follow(camera, layer, COLOURS, PLAN, '')).toBe(false);
  });
});
