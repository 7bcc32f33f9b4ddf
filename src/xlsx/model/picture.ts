/** A place on a sheet: the cell it lies in, and how far into it in pixels. */
export interface Corner {
  readonly row: number;
  readonly rowOffset: number;
  readonly column: number;
  readonly columnOffset: number;
}

/** A rectangle by the cells its corners lie in. */
export interface Corners {
  readonly from: Corner;
  readonly to: Corner;
}

/** A picture's bytes and the ending of its file. */
export interface ImageFile {
  readonly bytes: Uint8Array;
  readonly ending: string;
}

/** A picture that lies over the cells of a sheet. */
export interface PictureModel {
  readonly image: ImageFile;
  /** Where it lies while it is not turned. */
  readonly corners: Corners;
  /** How it goes along when cells move: with its first cell, with all it covers, or not at all. */
  readonly moves: "oneCell" | "twoCell" | "absolute";
  /** In degrees, clockwise, around its middle. */
  readonly angle: number;
  readonly mirroredAcross: boolean;
  readonly mirroredDown: boolean;
  /** What is cut off at each edge, as a share of the whole picture. */
  readonly crop?: Crop;
  /** The shape into which it is cut, by a file's name for it, if not a rectangle. */
  readonly shape?: string;
  /** What it shows, in words. */
  readonly description?: string;
}

export interface Crop {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
