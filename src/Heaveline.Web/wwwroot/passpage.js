// The pass on its page: what was done by hand before it listens is done again from here on. A file of a pass by itself needs none of this.
import { start as begin } from "./pass.js";

/** Begins it; nothing where another page is shown by now. */
export function start(root, page) {
    if (!root) return { show() {}, follow() {}, stop() {} };
    const pass = begin(root, page);
    heaveline.heard(root);
    return pass;
}
