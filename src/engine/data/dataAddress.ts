import { IMAGE_TYPES } from "../../xlsx/images";
import type { ImageFile } from "../../xlsx/model";

/** A picture as an address that holds the whole of it. */
export function toDataAddress(type: string, bytes: Uint8Array): string {
  let binary = "";
  // In pieces: a function takes only so many arguments.
  for (let start = 0; start < bytes.length; start += PIECE) {
    binary += String.fromCharCode(...bytes.subarray(start, start + PIECE));
  }
  return `data:${type};base64,${btoa(binary)}`;
}

const PIECE = 0x8000;

/** The picture in such an address; nothing where it is some other address. */
export function fromDataAddress(address: string): ImageFile | undefined {
  const [, type, base64] = /^data:(image\/[a-z]+);base64,([\w+/=]+)$/.exec(address) ?? [];
  const ending = [...IMAGE_TYPES].find(([, each]) => each === type)?.[0];
  if (base64 === undefined || ending === undefined) return undefined;
  const binary = atob(base64);
  const bytes = new Uint8Array(binary.length);
  for (let at = 0; at < bytes.length; at++) bytes[at] = binary.charCodeAt(at);
  return { bytes, ending };
}
