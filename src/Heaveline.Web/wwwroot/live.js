// A car that goes on by itself: modules that the program recorded (LivePass), their memory, and Newton's method around the balance. There is no
// number of a car here and no law of motion: both come with the modules.

// What is given stands at the beginning of memory: the step, the trim, a position in search of it, the drive, stretches of two curves, the car's own
// numbers, then what its curves answer (LiveGiven).
const step = 0, trim = 1, trims = 14, position = 15, unknowns = 9, speed = 24, start = 25, last = 26, stretch = 27, own = 31;
const fields = 4; // of a fold's state, before its answers (FoldRecord)
const near = 1e-9, rounds = 100, page = 65536; // the balance is found as nearly as the program finds it

export class Live {
    // Null where a browser has no such modules, or its policy lets none be made.
    static async open({ structure, numbers, step, ahead, balance, windows, measures, folds }) {
        const made = JSON.parse(structure), crossing = (64 + 8 * made.drawn / made.per) * (made.limit + 2 * made.per);
        const bytes = made.free + 8 * (made.balance + 2 * made.asked.length + made.measures.length + 64) + crossing;
        try {
            const memory = new WebAssembly.Memory({ initial: Math.ceil(bytes / page) + 1 }), of = { memory, pow: Math.pow };
            const modules = await Promise.all(
                [step, ahead, balance, windows, measures, ...folds].map(module => WebAssembly.instantiate(module, { of })));
            return new Live(made, new Float64Array(numbers.slice().buffer), memory, modules.map(module => module.instance.exports.run));
        } catch (refused) {
            if (refused instanceof WebAssembly.CompileError || refused instanceof WebAssembly.LinkError || refused instanceof RangeError
                || refused instanceof EvalError || refused instanceof TypeError) {
                console.info(`The curves wait for the program: ${refused.message}`);
                return null;
            }
            throw refused;
        }
    }

    constructor(made, numbers, memory, [run, ahead, balance, windows, measures, ...folds]) {
        Object.assign(this, { made, run, ahead, balance, windows, measures, folds });
        this.memory = new Float64Array(memory.buffer);
        this.answers = made.given - 2 * made.asked.length;
        let at = this.answers - own;
        const take = count => numbers.subarray(at, at += count);
        this.numbers = numbers.subarray(0, at);
        this.sliders = new Map(made.sliders.map(slider => [slider.key, { ...slider, rows: take(slider.places * slider.columns.length) }]));
        this.tracks = made.tracks.map(knots => ({ knots: take(knots), cubic: take(4 * knots) }));
        this.free = made.free / 8;
        this.scratch = this.free + made.balance;
        this.state = this.scratch + 2 * made.asked.length + made.measures.length;
        this.road = 8 * Math.ceil((this.state + 24) / 8);
        this.pairs = pairs(made.asked);
        this.drive(made.drive.speed, 1);
        this.slopes = new Float64Array(unknowns * unknowns);
        this.go = new Float64Array(unknowns);
    }

    // Place of a slider at a value; null where it has none.
    place(key, value) {
        const slider = this.sliders.get(key);
        if (!slider) return null;
        const k = Math.round((value - slider.from) / slider.step);
        return k >= 0 && k < slider.places && Math.abs(slider.from + k * slider.step - value) < 1e-6 * slider.step ? k : null;
    }

    // Whether the car stands with its sliders at these places; what is not named stands as it did.
    set(places) {
        const { memory } = this;
        memory.set(this.numbers, own);
        for (const [key, place] of places) {
            const { columns, rows, places } = this.sliders.get(key);
            columns.forEach((column, k) => {
                const row = rows[k * places + place], was = this.numbers[column], now = memory[own + column];
                memory[own + column] = now === was ? row : now * (row / was);
            });
        }
        memory[step] = this.made.sample / this.made.per;
        return this.stand();
    }

    // Over the road at a speed, its heights stretched; whether that is not too long.
    drive(speed, stretch) {
        if (this.speed === speed && this.stretch === stretch) return true;
        const { sample, drive, per, limit } = this.made, lead = Math.ceil(Math.max(drive.lead, drive.before / speed) / sample);
        const end = drive.end / speed > drive.longest ? drive.longest : drive.over / speed + drive.settling;
        const samples = lead + Math.ceil(end / sample) + 1;
        if (!(samples * per <= limit)) return false;
        Object.assign(this, { speed, stretch, samples, start: -lead * sample, steps: samples * per });
        this.moving = this.lay();
        this.out = this.road + 8 * (this.moving.count + 1);
        return true;
    }

    // The road under the wheels, step by step: a row of eight numbers, of front and rear left, of both right, then their rates.
    lay() {
        const { memory, made, tracks, road, speed, start, stretch } = this, h = made.sample / made.per;
        memory.fill(0, road, road + 8);
        const behind = i => i < 2 ? 0 : made.behind, track = i => tracks[made.under[i]], ends = [0, 1, 2, 3];
        const begin = Math.min(...ends.map(i => track(i).knots[0] + behind(i))), end = Math.max(...ends.map(i => track(i).knots.at(-1) + behind(i)));
        const clamp = (value, low, high) => Math.max(low, Math.min(high, value));
        const first = clamp(Math.floor((begin - speed * start) / (speed * h)) - 1, 0, this.steps);
        const last = clamp(Math.ceil((end - speed * start) / (speed * h)) + 1, first, this.steps);
        for (const i of ends) {
            const { knots, cubic } = track(i), level = cubic[0], place = 2 * (i % 2) + (i < 2 ? 0 : 1);
            let piece = -1;
            for (let k = first; k < last; k++) {
                const x = speed * (start + k * h) - behind(i), at = road + 8 * (k - first + 1) + place;
                while (piece + 1 < knots.length && x >= knots[piece + 1]) piece++;
                const d = piece < 0 ? 0 : x - knots[piece], c = 4 * Math.max(0, piece);
                memory[at] = piece < 0 ? 0 : stretch * (cubic[c] + d * (cubic[c + 1] + d * (cubic[c + 2] + d * cubic[c + 3])) - level);
                memory[at + 4] = piece < 0 ? 0 : stretch * speed * (cubic[c + 1] + d * (2 * cubic[c + 2] + d * 3 * cubic[c + 3]));
            }
            const after = road + 8 * (last - first + 1) + place;
            memory[after] = stretch * (cubic.at(-4) - level);
            memory[after + 4] = 0;
        }
        return { first, count: last - first + 1 };
    }

    // What is left over at a position.
    left(at) {
        this.memory.set(at, position);
        this.balance(8 * this.free);
        let sum = 0;
        for (let i = 0; i < unknowns; i++) sum += this.memory[this.free + i] ** 2;
        return Math.sqrt(sum);
    }

    // Newton's method, each step halved until less is left over.
    stand() {
        const { memory, free, slopes, go } = this;
        let at = new Float64Array(unknowns), miss = this.left(at);
        for (let round = 0; !(miss < near); round++) {
            if (round === rounds) return false;
            slopes.set(memory.subarray(free + unknowns, free + unknowns + slopes.length));
            for (let i = 0; i < unknowns; i++) go[i] = -memory[free + i];
            solve(slopes, go);
            let part = 1, next, now;
            do {
                next = at.map((value, i) => value + part * go[i]);
                now = this.left(next);
                part *= 0.5;
            } while (!(now < miss) && part > 1e-4);
            [at, miss] = [next, now];
        }
        const from = free + unknowns + slopes.length;
        memory.copyWithin(trim, from, from + trims);
        for (let i = from + trims; i < free + this.made.balance; i++) if (!(memory[i] > 0)) return false;
        this.margins = memory.slice(from + trims, free + this.made.balance);
        return true;
    }

    // One crossing: the numbers drawn of each sample; null where it leaves what the model describes, of which the program tells.
    cross() {
        const { made, memory, samples } = this, { drawn } = made;
        this.ahead(0);
        this.run(samples, made.per, this.moving.first - 1, this.moving.count, 8 * this.road, 8 * this.out);
        const numbers = memory.subarray(this.out, this.out + drawn * samples);
        return this.within(numbers) ? numbers : null;
    }

    // The measures of the crossing, SI, in their order; not finite where there is none.
    measured() {
        const { made, memory, samples, scratch, answers } = this, { asked } = made;
        [memory[speed], memory[start], memory[last]] = [this.speed, this.start, samples - 1];
        this.windows(8 * scratch);
        for (const [one, other] of this.pairs) {
            const [from, to] = [0, 1].map(end => [one, other].map(question => memory[scratch + 2 * question + end]));
            this.fold(asked[one], asked[other], from, to).forEach((answer, i) => memory[answers + 2 * (i % 2 ? other : one) + (i >> 1)] = answer);
        }
        const at = scratch + 2 * asked.length;
        this.measures(8 * at);
        return memory.subarray(at, at + made.measures.length);
    }

    // Two questions of one kind, side by side; the answers of the one and of the other in turn.
    fold(one, other, from, to) {
        const { made, memory, samples, state, out } = this, { drawn } = made, { reach, begin } = made.folds[one.fold];
        memory.set([...from, ...to], stretch);
        const first = reach > 0 ? Math.max(0, Math.floor(Math.min(...from))) : one.apart;
        const final = reach > 0 ? Math.min(samples - 2, Math.floor(Math.max(...to))) : samples - 1;
        const sample = (question, k) => k < 0 ? 0 : memory[out + drawn * k + question.column];
        const about = [-1, 0, 1].flatMap(k => [sample(one, first + k), sample(other, first + k)]);
        memory.set([first, first, ...about, ...begin.flatMap(value => [Number(value), Number(value)])], state);
        const at = question => 8 * (out + drawn * (first + reach) + question.column);
        if (final >= first) this.folds[one.fold](final - first + 1, at(one), at(other), 8 * drawn, 8 * drawn * one.apart, 8 * state);
        return memory.slice(state + 2 * fields, state + 2 * (fields + begin.length));
    }

    within(numbers) {
        const { drawn, steepest } = this.made, standing = memory => [0, 1, 2, 3].map(i => 1000 * memory[trim + i]);
        const travel = standing(this.memory), up = travel.map((s, i) => s + 1000 * this.margins[3 * i + 1]);
        const down = travel.map((s, i) => s - 1000 * this.margins[3 * i + 2]);
        for (let at = 0; at < numbers.length; at += drawn) {
            if (!(Math.abs(numbers[at + 2]) <= steepest && Math.abs(numbers[at + 4]) <= steepest)) return false;
            for (let i = 0; i < 4; i++) if (!(numbers[at + 5 + i] <= up[i] && numbers[at + 5 + i] >= down[i])) return false;
            for (let k = 19; k < this.made.shown; k++) if (!(numbers[at + k] > 0)) return false;
        }
        return true;
    }
}

// Questions that are answered side by side: of one kind, two at a time; one that is left over beside itself.
function pairs(asked) {
    const made = [], alone = new Map();
    asked.forEach(({ fold, apart }, i) => {
        const kind = `${fold} ${apart}`;
        if (!alone.has(kind)) return alone.set(kind, i);
        made.push([alone.get(kind), i]);
        return alone.delete(kind);
    });
    return [...made, ...[...alone.values()].map(i => [i, i])];
}

// Gaussian elimination with the largest of each column; the solution takes the right side's place.
function solve(a, b) {
    const n = b.length;
    for (let k = 0; k < n; k++) {
        let most = k;
        for (let i = k + 1; i < n; i++) if (Math.abs(a[n * i + k]) > Math.abs(a[n * most + k])) most = i;
        for (let j = k; j < n && most !== k; j++) [a[n * k + j], a[n * most + j]] = [a[n * most + j], a[n * k + j]];
        [b[k], b[most]] = [b[most], b[k]];
        for (let i = k + 1; i < n; i++) {
            const share = a[n * i + k] / a[n * k + k];
            for (let j = k; j < n && share !== 0; j++) a[n * i + j] -= share * a[n * k + j];
            b[i] -= share * b[k];
        }
    }
    for (let i = n - 1; i >= 0; i--) {
        for (let j = i + 1; j < n; j++) b[i] -= a[n * i + j] * b[j];
        b[i] /= a[n * i + i];
    }
}
