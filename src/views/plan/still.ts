import { wrapPi } from '../../units/angles.ts';
import type { Colours } from '../pen/colours.ts';
import type { Layer } from '../pen/layer.ts';
import { PlanCamera } from './camera.ts';

/** Drawn again when it would be so much larger or smaller, or turned by so much: until then nobody sees the difference. */
const SCALE_SHARE = 0.012;
const TURN_RAD = 0.008;
/** Drawn again when it has moved by so much: beyond the panel's edges there is so much of it. */
export const BEYOND_PX = 48;
/** Of that a part is left for the turn and the scale. */
const SHIFT_PX = 20;
/** A camera that moves less than this from frame to frame has come to rest, pixels. */
const REST_PX = 0.01;

/**
 * What of the plan stands still: drawn under one camera, and moved with the layer while the camera moves, as long
 * as strokes and type keep their size to within a hundredth. When the camera rests it is drawn once more, sharp.
 */
export class StillPicture {
  private readonly drawn = new PlanCamera();
  private colours: Colours | null = null;
  private what: object | null = null;
  private detail: string = '';
  private exact = false;
  private lastX = 0;
  private lastY = 0;

  forget(): void {
    this.colours = null;
  }

  /** Puts the layer where the camera looks; true when it has to be drawn anew, under this camera. */
  follow(camera: PlanCamera, layer: Layer, colours: Colours, what: object, detail: string): boolean {
    const { drawn } = this;
    const { container } = layer;
    const scale = camera.pxPerM / drawn.pxPerM;
    const turnRad = wrapPi(camera.upRad - drawn.upRad);
    // Where the upper left corner of what was drawn lies now.
    const right = drawn.rightM - drawn.middleX / drawn.pxPerM;
    const ahead = drawn.aheadM + drawn.middleY / drawn.pxPerM;
    const sin = Math.sin(turnRad);
    const cos = Math.cos(turnRad);
    const x = camera.middleX + (right * cos - ahead * sin - camera.rightM) * camera.pxPerM;
    const y = camera.middleY - (right * sin + ahead * cos - camera.aheadM) * camera.pxPerM;
    const same = colours === this.colours && what === this.what && detail === this.detail;
    const moved = Math.abs(x) + Math.abs(y) > REST_PX || scale !== 1 || turnRad !== 0;
    const resting = Math.abs(x - this.lastX) + Math.abs(y - this.lastY) < REST_PX;
    this.lastX = x;
    this.lastY = y;
    const near =
      Math.abs(scale - 1) < SCALE_SHARE &&
      Math.abs(turnRad) < TURN_RAD &&
      Math.abs(x) + Math.abs(y) < SHIFT_PX;
    if (same && near && !(moved && resting && !this.exact)) {
      if (moved) this.exact = false;
      container.scale.set(scale);
      container.rotation = -turnRad;
      container.position.set(x, y);
      return false;
    }
    this.colours = colours;
    this.what = what;
    this.detail = detail;
    this.exact = true;
    this.lastX = 0;
    this.lastY = 0;
    drawn.copy(camera);
    container.scale.set(1);
    container.rotation = 0;
    container.position.set(0, 0);
    return true;
  }
}
