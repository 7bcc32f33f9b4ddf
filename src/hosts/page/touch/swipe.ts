import "./touch.css";

/** A finger that moved less than this tapped. */
const SLACK = 8;

/** A finger that stays this long selects from there on, as a mouse does. */
const HOLD_TIME = 450;

/** What is left of a swipe's speed after each frame, once the finger is lifted. */
const FRICTION = 0.94;

/** Slower than this, in pixels a frame, nobody sees it move. */
const STILL = 0.5;

/**
 * Lets a finger scroll the cells. The spreadsheet takes every touch for a mouse that selects; here a
 * swipe scrolls, a tap selects the cell under it, and a finger that is held first selects a range.
 */
export function scrollBySwiping(workbook: HTMLElement): void {
  let touch: Touch | undefined;

  const listen = <K extends "pointerdown" | "pointermove" | "pointerup" | "pointercancel">(
    type: K,
    react: (event: PointerEvent, canvas: HTMLCanvasElement) => void,
  ) =>
    workbook.addEventListener(
      type,
      (event) => {
        // Events of our own making are for the spreadsheet.
        if (event.pointerType !== "touch" || !event.isTrusted) return;
        const canvas = event.target;
        if (canvas instanceof HTMLCanvasElement && /sheet-main/.test(canvas.id)) {
          react(event, canvas);
        }
      },
      true,
    );

  listen("pointerdown", (event, canvas) => {
    touch?.stop();
    if (!event.isPrimary) return;
    event.stopPropagation();
    touch = new Touch(event, canvas);
  });
  listen("pointermove", (event) => touch?.move(event));
  listen("pointerup", (event) => touch?.end(event));
  listen("pointercancel", () => touch?.stop());
}

/** One finger, from where it touches down to where it is lifted. */
class Touch {
  private state: "down" | "scrolling" | "selecting" | "over" = "down";
  private last: PointerEvent;
  private speed = { x: 0, y: 0 };
  private readonly hold: number;

  constructor(
    private readonly start: PointerEvent,
    private readonly canvas: HTMLCanvasElement,
  ) {
    this.last = start;
    this.hold = window.setTimeout(() => {
      this.state = "selecting";
      this.pass(start, "pointerdown");
    }, HOLD_TIME);
  }

  move(event: PointerEvent): void {
    if (this.state === "selecting") return;
    event.stopPropagation();
    const { clientX, clientY } = this.start;
    const far = Math.hypot(event.clientX - clientX, event.clientY - clientY) > SLACK;
    if (this.state === "down" && far) {
      window.clearTimeout(this.hold);
      this.state = "scrolling";
      this.last = event;
    }
    if (this.state !== "scrolling") return;
    this.speed = { x: this.last.clientX - event.clientX, y: this.last.clientY - event.clientY };
    this.last = event;
    this.scroll();
  }

  end(event: PointerEvent): void {
    window.clearTimeout(this.hold);
    if (this.state === "selecting") return;
    event.stopPropagation();
    if (this.state === "scrolling") this.glide();
    else {
      this.pass(this.start, "pointerdown");
      this.pass(event, "pointerup");
      this.state = "over";
    }
  }

  stop(): void {
    window.clearTimeout(this.hold);
    this.state = "over";
  }

  private glide(): void {
    this.speed = { x: this.speed.x * FRICTION, y: this.speed.y * FRICTION };
    if (this.state === "over" || Math.hypot(this.speed.x, this.speed.y) < STILL) return;
    this.scroll();
    requestAnimationFrame(() => this.glide());
  }

  /** The spreadsheet scrolls by a mouse wheel. */
  private scroll(): void {
    const { clientX, clientY } = this.start;
    const { x: deltaX, y: deltaY } = this.speed;
    const wheel = { bubbles: true, cancelable: true, clientX, clientY, deltaX, deltaY };
    this.canvas.dispatchEvent(new WheelEvent("wheel", wheel));
  }

  private pass(event: PointerEvent, type: string): void {
    const { clientX, clientY, pointerId, pointerType, isPrimary, button, buttons } = event;
    const copy = { clientX, clientY, pointerId, pointerType, isPrimary, button, buttons };
    this.canvas.dispatchEvent(new PointerEvent(type, { bubbles: true, cancelable: true, ...copy }));
  }
}
