// Charts and maps of a page: a sheet (structure and numbers, see ChartSheet) laid out for the room there is, drawn as SVG, and read by pointer and
// keyboard.

import { draw as paint } from "./draw.js";
import { prepare } from "./map.js";
import { lay } from "./plot.js";
import { Reading } from "./reading.js";
import { faces, put } from "./svg.js";
import { Twin } from "./twin.js";

const paperWidth = 680; // pixels: A4 and letter within their usual margins, at 96 to the inch
const drawn = new WeakMap();

class Chart {
    constructor(element) {
        this.element = element;
        this.plot = element.appendChild(Object.assign(document.createElement("div"), { className: "plot" }));
        this.reading = new Reading(element, this.plot);
        this.twin = new Twin(element);
        this.width = 0;
        this.watch = new ResizeObserver(() => { if (this.room() !== this.width) this.draw(); });
        this.watch.observe(element);
        // A sheet of paper is narrower than most screens: the chart is drawn anew for it, and back afterwards.
        this.toPaper = () => this.draw(Math.min(this.room(), paperWidth));
        this.fromPaper = () => this.draw();
        addEventListener("beforeprint", this.toPaper);
        addEventListener("afterprint", this.fromPaper);
    }

    room() {
        return Math.floor(this.element.clientWidth) || 800;
    }

    show(sheet, numbers, page, pair) {
        Object.assign(this, { sheet, numbers });
        this.reading.asked(page, pair);
        this.draw();
    }

    draw(width = this.room()) {
        if (!this.sheet) return;
        this.width = width;
        const sheet = structuredClone(this.sheet), picture = lay(sheet, this.numbers, width, prepare);
        const svg = put(document.createDocumentFragment(), "svg", {
            viewBox: `0 0 ${width} ${picture.height}`, width, height: picture.height, class: `picture${picture.narrow ? " narrow" : ""}`,
            fill: "none", "aria-hidden": "true",
        });
        paint(svg, picture);
        this.plot.replaceChildren(svg);
        this.reading.over(svg, picture);
        this.twin.of(picture);
    }

    clear() {
        this.watch.disconnect();
        removeEventListener("beforeprint", this.toPaper);
        removeEventListener("afterprint", this.fromPaper);
        this.reading.clear();
    }
}

/** Draws a sheet into an element; page is told of places that the reader picks, charts of one pair are read together. */
export async function draw(element, structure, bytes, page, pair) {
    const sheet = typeof structure === "string" ? JSON.parse(structure) : structure;
    const numbers = new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
    await faces();
    // Another page is shown by now.
    if (!element?.isConnected) return;
    if (!drawn.has(element)) drawn.set(element, new Chart(element));
    drawn.get(element).show(sheet, numbers, page, pair);
}

export function clear(element) {
    if (!element) return;
    drawn.get(element)?.clear();
    drawn.delete(element);
}
