// Removes what an earlier build left behind, so that no deleted file is shipped again.
import { rmSync } from "node:fs";

rmSync(new URL("../../dist", import.meta.url), { recursive: true, force: true });
