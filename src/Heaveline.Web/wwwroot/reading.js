// Reading a chart: a place is pointed at or walked to with the arrow keys, its values stand beside it and in words below; dragging, or Shift with the
// arrows, measures from one place to another. A place is always one that was computed: nothing is read between the points of a curve or a map.

import { mapOverlay, chartOverlay } from "./overlay.js";
import { stopsOf, nearest, mapWords, chartWords } from "./stops.js";
import { put } from "./svg.js";

const pairs = new Map(); // readings of charts that are read together, by the name of the pair

export class Reading {
    constructor(element, plot) {
        Object.assign(this, { element, plot, at: null, anchor: null, pinned: false, dragged: false });
        this.words = element.appendChild(Object.assign(document.createElement("p"), { className: "read" }));
        plot.tabIndex = 0;
        plot.setAttribute("role", "application");
        for (const [name, act] of Object.entries({
            pointermove: event => this.move(event), pointerdown: event => this.press(event), pointerup: event => this.release(event),
            pointerleave: event => this.leave(event), pointercancel: () => this.drop(), keydown: event => this.key(event),
            focus: () => this.focused(), blur: () => this.drop(),
        })) plot.addEventListener(name, act);
    }

    asked(page, pair) {
        this.page = page;
        this.forget();
        this.pair = pair || null;
        if (this.pair) pairs.set(pair, (pairs.get(pair) ?? new Set()).add(this));
    }

    // A new picture: what was read stays where it was, as near as the new one has it.
    over(svg, picture) {
        const former = this.at && this.place(this.at);
        this.picture = picture;
        this.overlay = put(svg, "g", { class: "reading" });
        picture.groups.forEach(stopsOf);
        this.plot.setAttribute("aria-label", (picture.panels[0].kind === "map" ? "Map" : "Chart")
            + ": arrow keys move the reading point, Shift with them measures" + (this.page ? ", Enter opens the place" : ""));
        this.anchor = null;
        this.pinned = false;
        const group = former && Math.min(former.group, picture.groups.length - 1);
        this.at = former ? { group, ...nearest(picture.groups[group], former.x, former.y) } : null;
        this.show();
    }

    place({ group, i, j }) {
        const stops = this.picture.groups[group].stops;
        return { group, x: stops.grid ? stops.xs[i] : stops[i].x, y: stops.grid ? stops.ys[j] : stops[i].y };
    }

    // The place nearest to a pointer: of the group of panels that it is over.
    find(event) {
        const box = this.plot.getBoundingClientRect(), ratio = this.picture.width / box.width;
        const px = (event.clientX - box.left) * ratio, py = (event.clientY - box.top) * ratio;
        const panel = this.picture.panels.findLast(one => py >= one.top - 20) ?? this.picture.panels[0];
        const group = this.picture.groups.findIndex(one => one.includes(panel)), { scale } = panel.x;
        const inside = px >= scale.from - 12 && px <= scale.to + 12 && py <= panel.bottom + 30;
        return inside ? { group, ...nearest(this.picture.groups[group], scale.back(px), panel.y.scale.back(py), px, py) } : null;
    }

    move(event) {
        if (!this.picture || (this.pinned && !(event.buttons & 1))) return;
        if (event.pointerType !== "mouse" && !(event.buttons & 1)) return;
        const at = this.find(event);
        if (event.buttons & 1 && this.pressed) {
            if (!at || at.group !== this.pressed.group) return;
            this.dragged ||= Math.hypot(event.clientX - this.pressed.x, event.clientY - this.pressed.y) > 5;
            if (this.dragged) this.anchor = this.pressed.at;
        }
        this.go(at, false);
    }

    press(event) {
        if (!this.picture || event.button !== 0) return;
        const at = this.find(event);
        Object.assign(this, { pinned: false, dragged: false, anchor: null });
        const again = at && this.at && at.group === this.at.group && at.i === this.at.i && at.j === this.at.j;
        this.pressed = at && { at, again, group: at.group, x: event.clientX, y: event.clientY };
        this.go(at, false);
    }

    release(event) {
        if (!this.pressed) return;
        const { again } = this.pressed;
        this.pressed = null;
        if (this.dragged) this.pinned = this.anchor !== null;
        // A finger has not read before it presses: its first press reads, the next one at the same place opens it.
        else if (this.page && this.at && (event.pointerType === "mouse" || again)) this.pick();
    }

    leave(event) {
        if (!this.pinned && event.pointerType === "mouse" && !(event.buttons & 1)) this.drop();
    }

    focused() {
        // A press finds its own place; who comes by the keyboard begins at the car, or in the middle.
        if (this.at || !this.picture || !this.plot.matches(":focus-visible")) return;
        const group = this.picture.groups[0], { stops } = group, here = group[0].marks.find(mark => mark.isHere);
        if (stops.length === 0) return;
        const middle = stops.grid ? { i: stops.xs.length >> 1, j: stops.ys.length >> 1 } : { i: stops.length >> 1 };
        this.go({ group: 0, ...(here && stops.grid ? nearest(group, here.x, here.y) : middle) }, true);
    }

    key(event) {
        if (!this.picture || event.altKey || event.metaKey) return;
        if (event.key === "Escape" && this.at) { this.escape(); return; }
        if (event.key === "Enter" && this.at && this.page) { event.preventDefault(); this.pick(); return; }
        const step = this.step(event.key);
        if (!step) return;
        event.preventDefault();
        if (!this.at) { this.focused(); return; }
        if (event.shiftKey) this.anchor ??= this.at;
        else if (!this.pinned) this.anchor = null;
        this.go(step, true);
    }

    // First what is measured ends, then the reading.
    escape() {
        if (!this.anchor) { this.drop(); return; }
        Object.assign(this, { anchor: null, pinned: false });
        this.go(this.at, true);
    }

    // Where a key leads; null where it leads nowhere.
    step(key) {
        const group = this.at?.group ?? 0, { stops } = this.picture.groups[group], at = this.at ?? { group, i: 0, j: 0 };
        const count = stops.grid ? stops.xs.length : stops.length, small = stops.grid ? 1 : Math.max(1, Math.round(count / 200));
        const along = { ArrowLeft: -small, ArrowRight: small, PageUp: -10 * small, PageDown: 10 * small, Home: -count, End: count }[key];
        const held = (value, most) => Math.min(most - 1, Math.max(0, value));
        if (along !== undefined) return { ...at, i: held(at.i + along, count) };
        const up = { ArrowUp: 1, ArrowDown: -1 }[key];
        if (up === undefined) return null;
        if (stops.grid) return { ...at, j: held(at.j + up, stops.ys.length) };
        const next = group - up;
        if (next < 0 || next >= this.picture.groups.length) return null;
        this.anchor = null;
        return { group: next, ...nearest(this.picture.groups[next], this.place(at).x, this.place(at).y) };
    }

    go(at, byKey) {
        const isSame = at && this.at && at.group === this.at.group && at.i === this.at.i && at.j === this.at.j;
        if (isSame && !byKey && !this.anchor && this.words.textContent) return;
        this.at = at;
        if (this.anchor && this.anchor.group !== at?.group) this.anchor = null;
        // What is walked to is spoken; what a pointer sweeps over is not.
        this.words.setAttribute("aria-live", byKey ? "polite" : "off");
        this.show();
        for (const other of pairs.get(this.pair) ?? []) {
            if (other !== this) other.follow(at && this.place(at), at && this.anchor && this.place(this.anchor));
        }
    }

    follow(place, anchor) {
        if (!this.picture) return;
        const of = one => one && { group: one.group, ...nearest(this.picture.groups[one.group], one.x, one.y) };
        this.at = place && this.picture.groups[place.group] ? of(place) : null;
        this.anchor = this.at ? of(anchor) : null;
        this.words.setAttribute("aria-live", "off");
        this.show();
    }

    drop() {
        Object.assign(this, { anchor: null, pinned: false, pressed: null });
        this.go(null, false);
    }

    show() {
        this.overlay?.replaceChildren();
        if (!this.at || !this.overlay || this.picture.groups[this.at.group].stops.length === 0) { this.words.textContent = ""; return; }
        const group = this.picture.groups[this.at.group], isMap = group[0].kind === "map";
        (isMap ? mapOverlay : chartOverlay)(this.overlay, this.picture, group, this.at, this.anchor);
        this.words.textContent = (isMap ? mapWords : chartWords)(group, this.at, this.anchor);
    }

    pick() {
        const { group, x, y } = this.place(this.at), panel = this.picture.panels.indexOf(this.picture.groups[group][0]);
        this.page.invokeMethodAsync("Pick", panel, x, Number.isFinite(y) ? y : 0);
    }

    forget() {
        pairs.get(this.pair)?.delete(this);
    }

    clear() {
        this.forget();
        this.plot.remove();
        this.words.remove();
    }
}
