// The pass page's curves and picture while a slider moves, worked out here: they follow within the frame, and go on where the program does not
// answer, and so do the numbers of its table and its headline. What it says when it does takes their place. Words are the program's own; while
// they are behind the curves the page says so.

import { Live } from "./live.js";

// Where a panel's curves stand among the numbers drawn of a sample (DrawnNumbers); a curve of both wheels of an axle is their mean.
const wheels = { front: [0, 1], rear: [2, 3], "front left": [0], "front right": [1], "rear left": [2], "rear right": [3] };
const columns = {
    heights: name => [name === "front" ? 0 : 1],
    pitch: () => [2],
    "pitch-acceleration": () => [3],
    roll: () => [4],
    travel: name => wheels[name]?.map(corner => 5 + corner),
    "tyre-load": name => wheels[name]?.map(corner => 9 + corner),
};
const inMillimetres = new Set(["heights", "travel"]);
const scene = 13, perSample = 6;

export class LivePass {
    constructor(pass) {
        this.pass = pass;
        this.places = new Map();
        this.drive = { speed: null, height: null }; // where these sliders stand, as they are shown; null: as at rest
        this.live = null;
        this.state = null;
        this.due = null; // which view's words are waited for
        this.told = new MutationObserver(() => this.arrived());
        this.told.observe(pass.root, { attributes: true, attributeFilter: ["data-told"] });
    }

    stop() { this.told.disconnect(); }

    // A state at rest: what followed another one no longer does.
    rest(state) {
        this.state = state;
        this.places.clear();
        this.drive = { speed: null, height: null };
        if (this.live && this.live.made.state !== state) this.live = null;
    }

    // What the program has recorded of a state, in its own time.
    async follow(data) {
        const live = await Live.open(data);
        if (live && live.made.state === this.state) this.live = live;
    }

    // A slider stands at a value: whether the curves are there. No number that was told of another stays lit beside it.
    move(key, text) {
        this.pass.root.dataset.waits = "";
        const isThere = this.stand(key, text);
        if (!isThere) this.numbers(null);
        return isThere;
    }

    stand(key, text) {
        if (!this.live) return false;
        if (key in this.drive) {
            this.drive[key] = Number(text);
            return this.show();
        }
        const place = this.live.place(key, Number(text));
        if (place === null) {
            this.places.delete(key);
            return false;
        }
        this.places.set(key, place);
        return this.show();
    }

    // A slider stays where it was: the program refused where it was put.
    forget(key) {
        if (key in this.drive) this.drive[key] = null;
        else this.places.delete(key);
    }

    show() {
        const started = performance.now(), { live } = this;
        if (!live) return false;
        const { made } = live, { drive } = made, { speed: shown, height } = this.drive;
        const speed = shown === null ? drive.speed : drive.speed * shown / drive.shownSpeed;
        const stretch = height === null ? 1 : height * drive.perHeight / drive.height;
        if (!(speed > 0 && stretch > 0) || !live.drive(speed, stretch) || !live.set(this.places)) return false;
        const numbers = live.cross();
        if (!numbers) return false;
        // What the program told last was of this speed and height; the former crossing was, too, and is not drawn behind another.
        const { told, strips } = this.pass, ratio = told.speed / speed, higher = told.height ? stretch * drive.height / told.height : 1;
        const moved = Math.abs(ratio - 1) > 1e-9 || Math.abs(higher - 1) > 1e-9;
        strips.follow(
            panel => columns[panel.id] && ((curve, to) => this.curve(numbers, panel.id, curve.name, to)),
            { ratio, higher, alone: moved, from: live.start, longer: drive.leaves / speed * (1 - 1 / ratio) });
        const motion = new Float32Array(perSample * Math.ceil(live.samples / made.stride));
        for (let i = 0, k = 0; k < live.samples; i += perSample, k += made.stride) {
            for (let j = 0; j < perSample; j++) motion[i + j] = numbers[made.drawn * k + scene + j];
        }
        this.pass.scene.follow({ motion, start: live.start, samples: motion.length / perSample, speed, higher, alone: moved });
        if (moved) this.pass.write("[data-behind]", "");
        this.numbers(live.measured());
        this.computed = performance.now() - started;
        this.lead();
        return true;
    }

    curve(numbers, id, name, to) {
        const picked = columns[id](name), { made, samples, start } = this.live;
        if (!picked) return null;
        const factor = inMillimetres.has(id) ? made.millimetre : 1, xs = new Float64Array(samples), ys = new Float64Array(samples);
        for (let k = 0; k < samples; k++) {
            xs[k] = start + k * made.sample;
            for (const column of picked) ys[k] += factor / picked.length * numbers[made.drawn * k + column];
        }
        return thin(xs, ys, to, made.most);
    }

    // The curves are ahead of what the program says.
    lead() {
        this.due = null;
        this.pass.root.dataset.ahead = "";
    }

    // Numbers beside what the program told last, as it would write them; none where there are none that can be had.
    numbers(values) {
        const { none, measures } = this.live?.made ?? { measures: [] };
        const texts = new Map(measures.map(({ key, ...how }, i) => [key, values && written(values[i], how, none)]));
        for (const place of this.pass.root.querySelectorAll("[data-live]")) {
            const [text, suffix] = texts.get(place.dataset.live) ?? ["", ""];
            place.textContent = "unit" in place.dataset ? text + suffix : text;
        }
    }

    // The program has caught up, and what it said of this view stands on the page, or will in a moment.
    caught(told) {
        this.due = told ?? 0;
        this.arrived();
    }

    arrived() {
        const { root } = this.pass;
        if (this.due === null || Number(root.dataset.told) < this.due) return;
        this.due = null;
        delete root.dataset.ahead;
        delete root.dataset.waits;
        this.numbers(null);
    }
}

// A measure as it is printed (Numeral), turned for a reader of other units after that; with its unit.
function written(si, { factor, digits, suffix, turn, turned }, none) {
    if (!Number.isFinite(si)) return [none, ""];
    const number = numeral(factor * si, digits);
    return [turn ? numeral(turn * Number(number.replace("−", "-")), turned) : number, suffix];
}

function numeral(value, digits) {
    const text = Math.abs(value).toFixed(digits);
    return value < 0 && /[1-9]/.test(text) ? `−${text}` : text;
}

// No more points than a screen shows: of every stretch its lowest and its highest (ThinCurve).
function thin(xs, ys, to, most) {
    let count = xs.length;
    while (count > 2 && xs[count - 2] > to) count--;
    if (count <= most) return { xs: xs.subarray(0, count), ys: ys.subarray(0, count) };
    const stretches = most / 2 - 1, kept = [0];
    for (let i = 0; i < stretches; i++) {
        const from = 1 + Math.floor(i * (count - 2) / stretches), end = 1 + Math.floor((i + 1) * (count - 2) / stretches);
        let low = from, high = from;
        for (let k = from; k < end; k++) {
            if (ys[k] < ys[low]) low = k;
            if (ys[k] > ys[high]) high = k;
        }
        if (low === high) kept.push(low); else kept.push(Math.min(low, high), Math.max(low, high));
    }
    kept.push(count - 1);
    return { xs: Float64Array.from(kept, k => xs[k]), ys: Float64Array.from(kept, k => ys[k]) };
}
