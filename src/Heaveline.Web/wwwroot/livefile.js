// One pass in a file of its own: the same sliders, picture and curves as on the page, with nobody to ask. What the program said stands written, of
// the state in which it was written; what stands beside it under "now" is worked out here.

import { Pass } from "./pass.js";

const unset = "Not drawn: the car cannot stand or drive so. Curves and picture are those of before.";

class LiveFile extends Pass {
    ask() {}

    pageKey() {}

    click(event) {
        if (event.target.closest?.("[data-back]")) this.back(); else super.click(event);
    }

    ahead(key) {
        super.ahead(key);
        this.refusals("");
    }

    unmoved(key) {
        this.refusals("");
        this.refusals(unset, key);
        this.root.dataset.ahead = "";
    }

    // Everything as it was written.
    back() {
        for (const slider of this.root.querySelectorAll("[data-setting]")) this.stand(slider.dataset.setting, slider.defaultValue);
        this.live.places.clear();
        this.live.drive = { speed: null, height: null };
        this.refusals("");
        if (this.live.show()) super.ahead("");
        delete this.root.dataset.ahead;
        delete this.root.dataset.waits;
    }
}

// Its numbers stand in it compressed: the length of what they are, what they are as JSON, then block after block.
async function opened(text) {
    const bytes = Uint8Array.from(atob(text), letter => letter.charCodeAt(0));
    const plain = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
    const all = new Uint8Array(await new Response(plain).arrayBuffer()), length = new DataView(all.buffer).getUint32(0, true);
    const { frame, live, sizes } = JSON.parse(new TextDecoder().decode(all.subarray(4, 4 + length)));
    let at = 4 + length;
    const alike = [4, 8];
    const [drawn, numbers, step, ahead, balance, windows, measures, ...folds] = sizes.map((size, i) => {
        const block = all.slice(at, at += size);
        return alike[i] ? apart(block, alike[i]) : block;
    });
    return {
        frame: { structure: frame, numbers: drawn },
        live: live && { structure: live, numbers, step, ahead, balance, windows, measures, folds },
    };
}

// Numbers from the differences that they lie as, the lowest byte of all first (Neighbours).
function apart(laid, width) {
    const count = laid.length / width, bytes = new Uint8Array(laid.length);
    for (let i = 0; i < count; i++) {
        let over = 0;
        for (let p = 0; p < width; p++) {
            const sum = laid[p * count + i] + (i > 0 ? bytes[width * (i - 1) + p] : 0) + over;
            bytes[width * i + p] = sum;
            over = sum >> 8;
        }
    }
    return bytes;
}

async function begin() {
    const root = document.querySelector(".pass"), { frame, live } = await opened(document.getElementById("numbers").textContent);
    root.dataset.runs = "";
    const file = new LiveFile(root, null);
    file.show(frame);
    if (live) await file.follow(live);
    if (!file.live.live) {
        root.dataset.still = "";
        for (const slider of root.querySelectorAll("[data-setting], [data-back]")) slider.disabled = true;
        return;
    }
    file.back();
}

begin();
