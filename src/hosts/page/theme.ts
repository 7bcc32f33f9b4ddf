import type { Theme } from "@univerjs/themes";
import { defaultTheme } from "@univerjs/themes";

/** The spreadsheet's own look, with our one accent colour (600 is that of `pane/colors.css`). */
export const theme: Theme = {
  ...defaultTheme,
  primary: {
    50: "#f0f7f7",
    100: "#e0eeee",
    200: "#bfdcdc",
    300: "#93c4c4",
    400: "#529a9b",
    500: "#2b7a7d",
    600: "#0e5a5e",
    700: "#0c4b4f",
    800: "#0a3d40",
    900: "#082f31",
  },
};
