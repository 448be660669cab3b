// Values at the nodes of a rectangular grid, cut at a level by marching squares. Along an edge the value runs straight; a cell whose diagonals lie
// on different sides is joined or parted by the saddle value of the bilinear surface [Nielson and Hamann, The asymptotic decider, IEEE
// Visualization 1991]. A cell with a missing corner is no part of the field. The printed maps are cut the same way.

export class ContourField {
    /** xs, ys: places of columns and rows, pixels; values: x running fastest, NaN where there is none. */
    constructor(xs, ys, values) {
        Object.assign(this, { xs, ys, values, nx: xs.length, ny: ys.length });
    }

    /** Outlines of the region at or above a level; minus infinity asks for the whole field. */
    regions(level) {
        const steps = new Steps();
        this.each((i, j) => { this.cut(i, j, level, steps); this.rim(i, j, level, steps); });
        return steps.chains().map(chain => chain.map(key => this.place(key, level)));
    }

    /** Lines of a level; a closed one ends on its first point. */
    lines(level) {
        const steps = new Steps();
        this.each((i, j) => this.cut(i, j, level, steps));
        return steps.chains().map(chain => chain.map(key => this.place(key, level)));
    }

    each(work) {
        for (let j = 0; j < this.ny - 1; j++) for (let i = 0; i < this.nx - 1; i++) if (this.whole(i, j)) work(i, j);
    }

    whole(i, j) {
        if (i < 0 || j < 0 || i >= this.nx - 1 || j >= this.ny - 1) return false;
        const n = j * this.nx + i, v = this.values;
        return !(Number.isNaN(v[n]) || Number.isNaN(v[n + 1]) || Number.isNaN(v[n + this.nx]) || Number.isNaN(v[n + this.nx + 1]));
    }

    // Going round a cell the outline leaves the edge where the value falls below the level and comes back where it rises above it again.
    cut(i, j, level, steps) {
        const n = j * this.nx + i, corners = [n, n + 1, n + this.nx + 1, n + this.nx], v = this.values, crossings = [];
        for (let k = 0; k < 4; k++) {
            const from = corners[k], to = corners[(k + 1) % 4];
            if ((v[from] >= level) !== (v[to] >= level)) crossings.push([this.edge(from, to), v[from] >= level]);
        }
        const count = crossings.length;
        if (count === 0) return;
        const [a, b, c, d] = corners.map(corner => v[corner]);
        const forward = count === 4 && (a * c - b * d) / (a + c - b - d) >= level ? 1 : count - 1;
        crossings.forEach(([key, leaves], k) => { if (leaves) steps.add(key, crossings[(k + forward) % count][0]); });
    }

    // Where no cell lies beyond an edge, the outline runs along it.
    rim(i, j, level, steps) {
        const n = j * this.nx + i, up = this.nx;
        if (!this.whole(i, j - 1)) this.along(n, n + 1, level, steps);
        if (!this.whole(i + 1, j)) this.along(n + 1, n + up + 1, level, steps);
        if (!this.whole(i, j + 1)) this.along(n + up + 1, n + up, level, steps);
        if (!this.whole(i - 1, j)) this.along(n + up, n, level, steps);
    }

    along(from, to, level, steps) {
        const starts = this.values[from] >= level, ends = this.values[to] >= level;
        if (starts || ends) steps.add(starts ? 3 * from : this.edge(from, to), ends ? 3 * to : this.edge(from, to));
    }

    // A node is 3n; the crossing on the edge from node n rightwards 3n + 1, upwards 3n + 2.
    edge(from, to) {
        return 3 * Math.min(from, to) + (Math.abs(from - to) === 1 ? 1 : 2);
    }

    place(key, level) {
        const n = Math.floor(key / 3), kind = key % 3, x = this.xs[n % this.nx], y = this.ys[Math.floor(n / this.nx)];
        if (kind === 0) return [x, y];
        const next = kind === 1 ? n + 1 : n + this.nx, share = (level - this.values[n]) / (this.values[next] - this.values[n]);
        return [x + share * (this.xs[next % this.nx] - x), y + share * (this.ys[Math.floor(next / this.nx)] - y)];
    }
}

// Directed steps between numbered points, strung together. At most two leave a point: where two cells touch only in a corner.
class Steps {
    starts = [];
    next = new Map();
    other = new Map();
    reached = new Set();

    add(from, to) {
        this.starts.push(from);
        this.reached.add(to);
        (this.next.has(from) ? this.other : this.next).set(from, to);
    }

    take(from) {
        for (const steps of [this.next, this.other]) {
            const to = steps.get(from);
            if (to !== undefined) { steps.delete(from); return to; }
        }
        return undefined;
    }

    // Open ones first.
    chains() {
        const chains = [];
        for (const start of [...this.starts.filter(start => !this.reached.has(start)), ...this.starts]) {
            const chain = [start];
            for (let to = this.take(start); to !== undefined; to = this.take(to)) {
                chain.push(to);
                if (to === start) break;
            }
            if (chain.length > 1) chains.push(chain);
        }
        return chains;
    }
}
