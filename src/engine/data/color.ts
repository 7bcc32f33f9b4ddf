import type { Nullable } from "@univerjs/core";

/** A colour as "#rrggbb", of one as a page writes it: "#f00", "#ff0000cc", "rgb(255, 0, 0)". */
export function hexColor(color: Nullable<string>): string | undefined {
  const [, short] = /^#([0-9a-f]{3})$/i.exec(color ?? "") ?? [];
  if (short) return `#${short.replace(/./g, "$&$&")}`.toLowerCase();
  const [, digits] = /^#([0-9a-f]{6})(?:[0-9a-f]{2})?$/i.exec(color ?? "") ?? [];
  if (digits) return `#${digits}`.toLowerCase();
  const channels = /^rgba?\(\s*(\d+)[\s,]+(\d+)[\s,]+(\d+)/i.exec(color ?? "")?.slice(1, 4);
  if (!channels) return undefined;
  const hex = channels.map((channel) =>
    Math.min(255, Number(channel)).toString(16).padStart(2, "0"),
  );
  return `#${hex.join("")}`;
}
