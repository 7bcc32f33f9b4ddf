import type { Theme } from "@univerjs/themes";
import { defaultTheme } from "@univerjs/themes";

/** The spreadsheet's own look, with our one accent colour (600 is that of `workbook.css`). */
export const theme: Theme = {
  ...defaultTheme,
  primary: {
    50: "#f1f7f5",
    100: "#e4efec",
    200: "#c5ddd8",
    300: "#9cc5bd",
    400: "#5f9d93",
    500: "#3a8177",
    600: "#1f6b63",
    700: "#195650",
    800: "#144540",
    900: "#0f3430",
  },
};
