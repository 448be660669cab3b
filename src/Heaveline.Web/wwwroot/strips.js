// Charts of a pass, one above the other on one time axis, drawn on a canvas: while a slider moves they must follow within a frame. They take
// the same sheet as the other charts (ChartSheet: structure and numbers).

import { colours } from "./inks.js";
import { lines } from "./lines.js";
import { settle, spread } from "./names.js";

const dashes = { Solid: [], Dashed: [6, 4], Dotted: [1.5, 3.5], DashDot: [7, 3, 1.5, 3] };
const millimetre = 3.9; // pixels for a millimetre of paper: judged by eye
const face = "'Heaveline Sans', system-ui, sans-serif";

export class Strips {
    constructor(place, picked) {
        this.place = place;
        this.base = document.createElement("canvas");
        this.over = document.createElement("canvas");
        for (const canvas of [this.base, this.over]) {
            canvas.setAttribute("aria-hidden", "true");
            place.append(canvas);
        }
        this.ranges = new Map();
        this.folded = false; // whether only the first panel is shown
        const pick = event => {
            if (!(event.buttons & 1)) this.anchor = null;
            if (this.sheet && (event.buttons & 1 || event.pointerType === "mouse")) {
                picked(this.timeAt(event.clientX - place.getBoundingClientRect().left), event.buttons & 1);
            }
        };
        place.addEventListener("pointermove", pick);
        // A pull with the mouse measures from where it began; a finger moves the picture, and measures nothing.
        place.addEventListener("pointerdown", event => {
            this.anchor = this.sheet && event.pointerType === "mouse" ? this.timeAt(event.clientX - place.getBoundingClientRect().left) : null;
            pick(event);
        });
    }

    stop() {
        this.base.remove();
        this.over.remove();
    }

    fit() {
        this.ink = colours(this.place);
        this.width = 0;
        if (this.sheet) { this.draw(); this.cursor(this.time); }
    }

    // atRest: the axes are fitted anew; otherwise they only make room, so that they do not jump under the reader's hand.
    show(sheet, numbers, atRest) {
        this.sheet = sheet;
        this.read(numbers);
        for (const panel of this.panels) this.ranges.set(panel.id, this.range(panel, atRest ? null : this.ranges.get(panel.id)));
        this.draw();
    }

    // New curves in place of the ones that are drawn, as far as they are known; labels on the old ones go with them. How many times as long every metre
    // of the road takes, how many times as high it is, whether nothing is drawn behind, where time begins, by how much the hit ends later.
    follow(known, { ratio, higher, alone, from, longer }) {
        this.from = from;
        this.to = this.sheet.panels[0].x.to + longer;
        // The hit is a stretch of the road; what follows it is a stretch of time.
        this.bands = this.sheet.bands.map(band => ({
            ...band, from: ratio * band.from, to: band.shade === "Grey" ? ratio * band.to : ratio * band.from + band.to - band.from,
        }));
        for (const panel of this.panels) {
            const curves = known(panel);
            for (const curve of panel.curves) {
                curve.hidden = alone && curve.ink === "Fourth";
                if (panel.id === "road") Object.assign(curve, { xs: curve.told.xs.map(x => ratio * x), ys: curve.told.ys.map(y => higher * y) });
                else if (curves && curve.ink !== "Fourth") Object.assign(curve, curves(curve, this.to) ?? {});
            }
            this.ranges.set(panel.id, this.range(panel, this.ranges.get(panel.id)));
            panel.marks = [];
        }
        this.draw();
    }

    read(numbers) {
        let at = 0;
        this.panels = this.sheet.panels.map(panel => ({
            ...panel,
            curves: panel.traces.map(trace => {
                const xs = numbers.subarray(at, at + trace.n), ys = numbers.subarray(at + trace.n, at + 2 * trace.n);
                at += 2 * trace.n;
                return { ...trace, xs, ys };
            }),
        }));
        this.length = at;
        this.from = this.sheet.panels[0].x.from;
        this.to = this.sheet.panels[0].x.to;
        this.bands = this.sheet.bands;
        for (const panel of this.panels) {
            // Where nods are labelled, what is read off has their digits.
            panel.print = panel.marks.length > 1 ? print1 : print3;
            for (const curve of panel.curves) curve.told = { xs: curve.xs, ys: curve.ys };
        }
    }

    range(panel, before) {
        let low = 0, high = 0;
        for (const curve of panel.curves) if (!curve.hidden) for (const y of curve.ys) { if (y < low) low = y; if (y > high) high = y; }
        for (const limit of panel.limits) if (!limit.upright) { low = Math.min(low, limit.at); high = Math.max(high, limit.at); }
        // Over and under the nods there is room for their labels.
        const room = (panel.marks.length > 1 ? 0.26 : 0.08) * (high - low || 1);
        low -= room;
        high += room;
        if (before && high - low > 0.55 * (before.high - before.low) && low >= before.low && high <= before.high) return before;
        return before ? { low: Math.min(low, 1.1 * low), high: Math.max(high, 1.1 * high) } : { low, high };
    }

    get shown() { return this.folded ? this.panels.slice(0, 1) : this.panels; }

    fold(isFolded) {
        this.folded = isFolded;
        if (this.sheet) { this.draw(); this.cursor(this.time); }
    }

    arrange() {
        const width = Math.floor(this.place.clientWidth), narrow = width < 560;
        const pen = this.base.getContext("2d");
        pen.font = `12px ${face}`;
        const wide = words => pen.measureText(words).width;
        this.left = narrow ? 40 : 52;
        // The names at the curves' ends are never cut: long ones are broken, and no word is wider than the room beside the curves.
        const most = Math.max(narrow ? 84 : 150, .22 * width);
        for (const panel of this.panels) for (const curve of panel.curves) curve.lines = curve.name ? lines(curve.name, most, wide) : [];
        const names = this.panels.flatMap(panel => panel.curves.flatMap(curve => curve.lines));
        this.right = Math.max(narrow ? 44 : 64, ...names.map(words => Math.ceil(wide(words)) + 8));
        let top = 24;
        pen.font = `bold 12px ${face}`;
        this.lanes = this.shown.map(panel => {
            const heading = lines(panel.y.unit ? `${panel.y.label} (${panel.y.unit})` : panel.y.label, width - this.left - 4, wide);
            const lane = { heading, top: top + 5 + 15 * heading.length, height: Math.round(panel.height * millimetre * (narrow ? 0.85 : 1)) };
            top = lane.top + lane.height + 8;
            return lane;
        });
        const height = top + 38;
        const ratio = Math.min(2, window.devicePixelRatio || 1);
        if (this.width !== width || this.height !== height) {
            this.width = width;
            this.height = height;
            this.place.style.height = `${height}px`;
            for (const canvas of [this.base, this.over]) {
                canvas.width = Math.floor(width * ratio);
                canvas.height = Math.floor(height * ratio);
                canvas.style.width = `${width}px`;
                canvas.style.height = `${height}px`;
            }
        }
        this.ratio = ratio;
        this.px = x => this.left + (x - this.from) / (this.to - this.from) * (this.width - this.left - this.right);
    }

    timeAt(pixel) {
        const part = (pixel - this.left) / (this.width - this.left - this.right);
        return this.from + Math.min(1, Math.max(0, part)) * (this.to - this.from);
    }

    draw() {
        this.ink ??= colours(this.place);
        this.arrange();
        const pen = this.base.getContext("2d"), { ink } = this;
        pen.setTransform(this.ratio, 0, 0, this.ratio, 0, 0);
        pen.clearRect(0, 0, this.width, this.height);
        const last = this.lanes[this.lanes.length - 1], bottom = last.top + last.height, right = this.width - this.right;
        let labelled = -Infinity;
        for (const band of this.bands) {
            const x0 = Math.max(this.left, this.px(band.from)), x1 = Math.min(right, this.px(band.to));
            pen.fillStyle = band.shade === "Grey" ? ink.groundDeep : ink.ground;
            for (const lane of this.lanes) pen.fillRect(x0, lane.top, x1 - x0, lane.height);
            pen.font = `12px ${face}`;
            const half = pen.measureText(band.label).width / 2;
            const middle = Math.min(this.width - half - 2, Math.max((x0 + x1) / 2, labelled + half + 10, half + 2));
            this.text(pen, band.label, middle, 11, "center", ink.quiet);
            labelled = middle + half;
        }
        this.shown.forEach((panel, i) => this.panel(pen, panel, this.lanes[i]));
        pen.strokeStyle = ink.edge;
        pen.lineWidth = 1;
        for (const x of ticks(this.from, this.to, Math.max(3, Math.floor((right - this.left) / 70)))) {
            const at = Math.round(this.px(x)) + 0.5;
            pen.beginPath();
            pen.moveTo(at, bottom);
            pen.lineTo(at, bottom + 5);
            pen.stroke();
            this.text(pen, print(x), at, bottom + 14, "center", ink.text);
        }
        const axis = this.sheet.panels[0].x;
        this.text(pen, this.width < 560 ? `time (${axis.unit})` : `${axis.label} (${axis.unit})`, this.left, bottom + 31, "left", ink.text);
    }

    panel(pen, panel, lane) {
        const { ink } = this, range = this.ranges.get(panel.id), right = this.width - this.right;
        const py = lane.py = y => lane.top + (range.high - y) / (range.high - range.low) * lane.height;
        lane.heading.forEach((words, k) =>
            this.text(pen, words, this.left, lane.top - 9 - 15 * (lane.heading.length - 1 - k), "left", ink.text, "bold"));
        pen.lineWidth = 1;
        for (const y of ticks(range.low, range.high, Math.max(2, Math.floor(lane.height / 22)))) {
            const at = Math.round(py(y)) + 0.5;
            pen.strokeStyle = y === 0 ? ink.edge : ink.line;
            pen.beginPath();
            pen.moveTo(this.left, at);
            pen.lineTo(right, at);
            pen.stroke();
            this.text(pen, print(y), this.left - 7, at, "right", ink.text);
        }
        pen.save();
        pen.beginPath();
        pen.rect(this.left, lane.top - 2, right - this.left, lane.height + 4);
        pen.clip();
        for (const limit of panel.limits) {
            const at = py(limit.at);
            pen.setLineDash([2, 3]);
            pen.strokeStyle = ink.text;
            pen.beginPath();
            pen.moveTo(this.left, at);
            pen.lineTo(right, at);
            pen.stroke();
            pen.setLineDash([]);
        }
        for (const curve of panel.curves.filter(one => !one.hidden)) {
            // The former state is told by its width, not by its colour alone.
            const isFormer = curve.ink === "Fourth";
            pen.strokeStyle = isFormer ? ink.former : ink[curve.ink];
            pen.lineWidth = isFormer ? 5.5 : 1.6 * curve.width;
            pen.globalAlpha = isFormer ? 0.6 : 1;
            pen.setLineDash(isFormer ? [] : dashes[curve.dash]);
            pen.beginPath();
            const { xs, ys } = curve;
            for (let k = 0; k < xs.length; k++) {
                const x = this.px(xs[k]), y = py(ys[k]);
                if (k === 0) pen.moveTo(x, y); else pen.lineTo(x, y);
            }
            pen.stroke();
        }
        pen.globalAlpha = 1;
        pen.setLineDash([]);
        pen.restore();
        const isNods = panel.marks.length > 1;
        this.limits(pen, panel, lane, py, right);
        const taken = lane.taken = this.names(pen, panel, lane, py, right);
        for (const mark of panel.marks) {
            const x = this.px(mark.x), y = py(mark.y);
            pen.beginPath();
            pen.arc(x, y, 3.5, 0, 2 * Math.PI);
            pen.fillStyle = ink[mark.ink];
            pen.fill();
            if (isNods) {
                // Beside its nod, further out where another stands there, and left out where there is no room: the nod stays a point.
                pen.font = `bold 12px ${face}`;
                const words = this.width < 560 ? mark.label.split(" ").pop() : mark.label, half = pen.measureText(words).width / 2 + 2;
                const way = mark.y < 0 ? 1 : -1, middles = [x, Math.min(x, right - half), Math.max(x, this.left + half)];
                const places = [15, 29, -15, 43].flatMap(far => middles.map(at => [at - half, y + way * far - 7, at + half, y + way * far + 7]));
                const place = settle(places, taken);
                if (place) this.text(pen, words, place[0] + half, place[1] + 7, "center", ink.text, "bold", ink.paper);
                continue;
            }
            pen.font = `12px ${face}`;
            const room = pen.measureText(mark.label).width;
            const level = Math.min(lane.top + lane.height - 7, Math.max(lane.top + 7, y + (mark.y < 0 ? 2 : -2)));
            const sides = [[x + 7, x + 7 + room], [x - 7 - room, x - 7]].filter(([from, to]) => from >= 0 && to <= this.width - 2);
            const place = settle([0, 14, -14].flatMap(off => sides.map(([from, to]) => [from, level + off - 7, to, level + off + 7])), taken);
            if (place) this.text(pen, mark.label, place[0], place[1] + 7, "left", ink.text, "", ink.paper);
        }
    }

    // Names of stops and the like, each whole within its lane, beside its own line and as far from the others' lines as it can stand.
    limits(pen, panel, lane, py, right) {
        const flat = panel.limits.filter(limit => !limit.upright), set = [];
        pen.font = `12px ${face}`;
        for (const limit of flat) {
            const at = py(limit.at), size = pen.measureText(limit.label).width;
            // Those of the rear stand further left, so that two that lie close do not cover one another.
            const end = Math.max(this.left + size + 4, right - (limit.end === "Rear" ? 130 : 4));
            const free = y => Math.min(
                ...flat.map(other => Math.abs(py(other.at) - y)),
                ...set.filter(other => other.end > end - size - 4 && end > other.end - other.size - 4).map(other => Math.abs(other.y - y) - 6));
            const places = [at + (limit.at < 0 ? -9 : 9), at + (limit.at < 0 ? 9 : -9)]
                .filter(y => y >= lane.top + 7 && y <= lane.top + lane.height - 7);
            const y = places.length === 2 && free(places[1]) > free(places[0]) + 3 ? places[1]
                : places[0] ?? Math.min(lane.top + lane.height - 7, Math.max(lane.top + 7, at));
            set.push({ end, size, y });
            this.text(pen, limit.label, end, y, "right", this.ink.quiet, "", this.ink.paper);
        }
    }

    // Names at the curves' ends, kept apart and within their lane, and the rooms that they take.
    names(pen, panel, lane, py, right) {
        const named = panel.curves.filter(curve => curve.name && !curve.hidden)
            .map(curve => ({ curve, at: py(curve.ys[curve.ys.length - 1]), tall: 14 * curve.lines.length }));
        spread(named, lane.top - 6, lane.top + lane.height + 6);
        pen.font = `12px ${face}`;
        return named.map(({ curve, y, tall }) => {
            curve.lines.forEach((words, k) => this.text(
                pen, words, right + 5, y + 14 * (k - (curve.lines.length - 1) / 2), "left", this.ink[curve.ink]));
            return [right + 5, y - tall / 2, right + 5 + Math.max(...curve.lines.map(words => pen.measureText(words).width)), y + tall / 2];
        });
    }

    // From where to where is measured; null where nothing is.
    get measured() {
        return this.anchor !== null && this.anchor !== undefined && Math.abs(this.px(this.time) - this.px(this.anchor)) > 5 ? this.anchor : null;
    }

    cursor(time) {
        this.time = time;
        if (!this.panels || !this.lanes) return;
        const pen = this.over.getContext("2d"), { ink } = this;
        pen.setTransform(this.ratio, 0, 0, this.ratio, 0, 0);
        pen.clearRect(0, 0, this.width, this.height);
        if (time < this.from || time > this.to) return;
        const x = this.px(time), last = this.lanes[this.lanes.length - 1], from = this.measured;
        if (from !== null) {
            pen.globalAlpha = .12;
            pen.fillStyle = ink.text;
            for (const lane of this.lanes) pen.fillRect(Math.min(x, this.px(from)), lane.top, Math.abs(x - this.px(from)), lane.height);
            pen.globalAlpha = 1;
            const words = `${print3(Math.abs(time - from))} ${this.sheet.panels[0].x.unit}`;
            this.text(pen, words, (x + this.px(from)) / 2, last.top + last.height - 9, "center", ink.text, "bold", ink.paper);
        }
        pen.strokeStyle = ink.text;
        pen.lineWidth = 1.2;
        pen.beginPath();
        pen.moveTo(x, this.lanes[0].top - 2);
        pen.lineTo(x, last.top + last.height);
        pen.stroke();
        this.shown.forEach((panel, i) => {
            const lane = this.lanes[i], set = [];
            // A nod that the line stands on says its value itself.
            const isSaid = from === null && panel.print === print1 && panel.marks.some(mark => Math.abs(this.px(mark.x) - x) < 6);
            for (const curve of panel.curves) {
                if (curve.ink === "Fourth") continue; // the former state is drawn, not read out
                const y = valueAt(curve, time), before = from === null ? 0 : valueAt(curve, from);
                if (Number.isNaN(y)) continue;
                pen.beginPath();
                pen.arc(x, lane.py(y), 3, 0, 2 * Math.PI);
                pen.fillStyle = ink[curve.ink];
                pen.fill();
                if (isSaid) continue;
                const words = from === null ? panel.print(y) : Number.isNaN(before) ? "" : `${y < before ? "" : "+"}${panel.print(y - before)}`;
                set.push({ words, colour: ink[curve.ink], at: lane.py(y), tall: 14 });
            }
            // Beside the place itself, kept apart, on the side where there is room.
            if (set.length * 14 > lane.height) return;
            spread(set, lane.top, lane.top + lane.height);
            const side = x > this.width - this.right - 60 ? "right" : "left", taken = [...lane.taken ?? []];
            pen.font = `bold 12px ${face}`;
            for (const { words, colour, y } of set) {
                // Where a word of the curves stands, on the other side or a line further.
                const room = pen.measureText(words).width, sides = [x + 8, x - 8 - room];
                if (side === "right") sides.reverse();
                const places = [0, 14, -14, 28, -28].flatMap(off => sides.map(left => [left, y + off - 7, left + room, y + off + 7]));
                const [left, top] = settle(places, taken) ?? places[0];
                this.text(pen, words, left, top + 7, "left", colour, "bold", ink.paper);
            }
        });
    }

    text(pen, words, x, y, align, colour, weight = "", ground = null) {
        pen.font = `${weight} 12px ${face}`;
        pen.textAlign = align;
        pen.textBaseline = "middle";
        if (ground) {
            // Letters over curves and lines keep a little room of their own, so that nothing strikes them through.
            pen.strokeStyle = ground;
            pen.lineWidth = 5;
            pen.lineJoin = "round";
            pen.strokeText(words, x, y);
            pen.lineJoin = "miter";
            pen.lineWidth = 1;
        }
        pen.fillStyle = colour;
        pen.fillText(words, x, y);
    }
}

function valueAt({ xs, ys }, time) {
    if (time < xs[0] || time > xs[xs.length - 1]) return NaN;
    let low = 0, high = xs.length - 1;
    while (high - low > 1) {
        const middle = (low + high) >> 1;
        if (xs[middle] <= time) low = middle; else high = middle;
    }
    const span = xs[high] - xs[low];
    return span > 0 ? ys[low] + (time - xs[low]) / span * (ys[high] - ys[low]) : ys[low];
}

function ticks(from, to, most) {
    const raw = (to - from) / Math.max(1, most), power = 10 ** Math.floor(Math.log10(raw));
    const step = power * ([1, 2, 5, 10].find(n => n * power >= raw) ?? 10);
    const list = [];
    for (let k = Math.ceil(from / step - 1e-9); k * step <= to + 1e-9 * step; k++) list.push(Number((k * step).toPrecision(12)));
    return list;
}

const print = value => (value < 0 ? "−" : "") + Number(Math.abs(value).toPrecision(6)).toString();
const print1 = value => (value < -0.05 ? "−" : "") + Math.abs(value).toFixed(1);
const print3 = value => (value < 0 ? "−" : "") + Math.abs(value).toPrecision(3);
