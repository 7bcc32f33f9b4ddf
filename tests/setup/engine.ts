import { prepareNode } from "../../src/engine/node";

// Loaded before the first test of a process, whose time would otherwise run while this does.
prepareNode();
await import("../../src/engine/engine");
