// The film: six moments of a pass, found in its pitch curve by the program (PassPhase), each with a picture. They stand side by side however far
// apart they are in time; between two of them the bead moves in proportion. Dragging along them, pressing one and the arrow keys move the picture.

export class Film {
    constructor(root, scene, moved) {
        this.root = root;
        this.scene = scene;
        this.moved = moved;
        this.frames = [...root.querySelectorAll("[data-frame]")];
        this.phases = [];
    }

    // While a slider moves the words follow at once, the small pictures as soon as the hand pauses: the large one is looked at.
    show(phases, atRest) {
        this.phases = phases;
        this.frames.forEach((frame, i) => {
            const words = frame.querySelector("span");
            if (words.textContent !== phases[i][1]) words.textContent = phases[i][1];
        });
        clearTimeout(this.later);
        if (atRest) this.draw(); else this.later = setTimeout(() => this.draw(), 100);
    }

    stop() { clearTimeout(this.later); }

    draw() {
        if (this.phases.length === 0) return;
        this.frames.forEach((frame, i) => this.scene.still(frame.querySelector("canvas"), this.phases[i][0]));
    }

    // From 0 at the left edge to 1 at the right: frames have their moments in their middles.
    place(time) {
        const { phases } = this, n = phases.length;
        for (let i = 0; i < n - 1; i++) {
            const [from, to] = [phases[i][0], phases[i + 1][0]];
            if (time < to) return Math.max(0, (i + 0.5 + (time - from) / Math.max(1e-6, to - from)) / n);
        }
        return Math.min(1, (n - 0.5 + 0.5 * (time - phases[n - 1][0]) / Math.max(1e-6, this.to - phases[n - 1][0])) / n);
    }

    timeAt(place) {
        const { phases } = this, n = phases.length, k = place * n - 0.5;
        if (k >= n - 1) return phases[n - 1][0] + 2 * (k - n + 1) * Math.max(0, this.to - phases[n - 1][0]);
        const i = Math.max(0, Math.floor(k));
        return phases[i][0] + (k - i) * (phases[i + 1][0] - phases[i][0]);
    }

    // Which frame is here, now.
    mark(time) {
        const here = Math.min(this.frames.length - 1, Math.floor(this.place(time) * this.frames.length));
        this.frames.forEach((frame, i) => {
            if (i === here) frame.setAttribute("aria-current", "step"); else frame.removeAttribute("aria-current");
        });
    }

    click(event) {
        const i = this.frames.indexOf(event.target.closest?.("[data-frame]"));
        if (i >= 0 && this.phases[i]) this.moved(this.phases[i][0]);
    }

    drag(event) {
        if (event.buttons !== 1 || event.pointerType === "touch" || this.phases.length === 0 || event.target.hasAttribute("data-scrub")) return;
        const box = this.root.getBoundingClientRect();
        this.moved(this.timeAt((event.clientX - box.left) / box.width));
    }

    // Whether a key was one of the film's own.
    key(event) {
        const i = this.frames.indexOf(event.target), next = { ArrowRight: i + 1, ArrowLeft: i - 1, Home: 0, End: this.frames.length - 1 }[event.key];
        if (i < 0 || next === undefined || !this.phases[next]) return false;
        event.preventDefault();
        this.frames[next].focus();
        this.moved(this.phases[next][0]);
        return true;
    }
}
