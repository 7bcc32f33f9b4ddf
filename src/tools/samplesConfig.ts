import type { Configuration } from "webpack";
import { filesAlone } from "./emitting";
import { demoFile, portableDemoFile } from "./samples";

/** The sample workbooks beside the built page. */
export const samplesConfig = (): Configuration =>
  filesAlone("samples", async (emit) => {
    const demo = await demoFile();
    emit("demo.xlsx", demo);
    emit("demo-portable.xlsx", await portableDemoFile(demo));
  });
