// The pass on its page: what was done by hand before it listens is done again from here on. A file of a pass that stands by itself needs none of this.
import { start as begin } from "./pass.js";

/** Begins it. */
export function start(root, page) {
    const pass = begin(root, page);
    heaveline.heard(root);
    return pass;
}
