import { Engine, Layer, SelectionControl } from "@univerjs/preset-sheets-core";

/*
 * The spreadsheet draws in loops, one for the cells and one for each place that is typed in: as soon as a frame is over
 * a loop asks the browser for the next, sixty times a second for as long as the page is open, and looks whether
 * something is dirty. Here a loop rests once nothing is, and what makes something dirty starts it again. A scene draws
 * where one of its layers is dirty and not otherwise, and a layer becomes so by `makeDirty` alone, so nothing is missed.
 */

type Drawing = () => void;

const { runRenderLoop, stopRenderLoop } = Engine.prototype;
const { makeDirty } = Layer.prototype;

/** What draws on one canvas, whether its loop is under way or rests. */
class Loop {
  private readonly drawings = new Set<Drawing>();

  constructor(private readonly engine: Engine) {
    engine.endFrame$.subscribe({
      next: () => this.restIfDone(),
      complete: () => this.drawings.clear(),
    });
  }

  add(drawing: Drawing): void {
    this.drawings.add(drawing);
    this.wake();
  }

  remove(drawing: Drawing | undefined): void {
    if (drawing) this.drawings.delete(drawing);
    else this.drawings.clear();
    stopRenderLoop.call(this.engine, drawing);
  }

  wake(): void {
    for (const drawing of this.drawings) runRenderLoop.call(this.engine, drawing);
  }

  private restIfDone(): void {
    const scenes = Object.values(this.engine.getScenes());
    if (!scenes.some((scene) => scene.isDirty())) stopRenderLoop.call(this.engine);
  }
}

const loops = new WeakMap<Engine, Loop>();

function loopOf(engine: Engine): Loop {
  const loop = loops.get(engine) ?? new Loop(engine);
  loops.set(engine, loop);
  return loop;
}

Engine.prototype.runRenderLoop = function (drawing) {
  loopOf(this).add(drawing);
};

Engine.prototype.stopRenderLoop = function (drawing) {
  loopOf(this).remove(drawing);
};

Layer.prototype.makeDirty = function (isDirty = true) {
  makeDirty.call(this, isDirty);
  const engine = this.scene.getEngine();
  if (isDirty && engine) loops.get(engine)?.wake();
  return this;
};

/** Layers that become dirty when what is being done is done, drawing among it. */
const waiting = new WeakSet<Layer>();

/** A key makes a hundred things dirty; the spreadsheet opens and closes a message channel for each. */
Layer.prototype.makeDirtyWithDebounce = function (isDirty = true) {
  if (waiting.has(this)) return;
  waiting.add(this);
  queueMicrotask(() => {
    waiting.delete(this);
    this.makeDirty(isDirty);
  });
};

/**
 * The outline of copied cells marches, which has all be drawn anew in each frame for as long as they stay copied, and
 * goes on by itself when they no longer are. Here its dashes stand still.
 */
SelectionControl.prototype["_startAntLineAnimation"] = () => undefined;
