import { partAt, pathIn, textAt, type Package } from "../package";

/** The package with one part's text replaced, or put at its end; every other part is the same bytes. */
export function withText(file: Package, path: string, text: string): Package {
  const parts = new Map(file.parts);
  parts.set(pathIn(file, path), encodeLike(partAt(file, path), text));
  return { parts };
}

/** The package without a part. */
export function withoutPart(file: Package, path: string): Package {
  const parts = new Map(file.parts);
  parts.delete(pathIn(file, path));
  return { parts };
}

/** A part's text changed by a function; nothing happens to one that is not there. */
export function withChange(file: Package, path: string, change: (text: string) => string): Package {
  if (!partAt(file, path)) return file;
  const before = textAt(file, path);
  const after = change(before);
  return after === before ? file : withText(file, path, after);
}

const MARK_UTF8 = [0xef, 0xbb, 0xbf];

/** Text as bytes in the encoding that its part had: programs differ, and a change is no reason to. */
function encodeLike(original: Uint8Array | undefined, text: string): Uint8Array {
  const [first, second, third] = original ?? [];
  if (first === 0xff && second === 0xfe) return encodeUtf16(text, true);
  if (first === 0xfe && second === 0xff) return encodeUtf16(text, false);
  const utf8 = text.replace(/^(<\?xml[^>]*\bencoding=["'])(?!utf-8["'])[\w.-]+/i, "$1UTF-8");
  const bytes = new TextEncoder().encode(utf8);
  const marked = first === MARK_UTF8[0] && second === MARK_UTF8[1] && third === MARK_UTF8[2];
  if (!marked) return bytes;
  const withMark = new Uint8Array(MARK_UTF8.length + bytes.length);
  withMark.set(MARK_UTF8);
  withMark.set(bytes, MARK_UTF8.length);
  return withMark;
}

function encodeUtf16(text: string, littleEndian: boolean): Uint8Array {
  const bytes = new Uint8Array(2 + 2 * text.length);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, littleEndian);
  for (let index = 0; index < text.length; index++) {
    view.setUint16(2 + 2 * index, text.charCodeAt(index), littleEndian);
  }
  return bytes;
}
