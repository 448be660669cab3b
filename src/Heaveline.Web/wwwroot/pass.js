// The pass page in the browser: sliders ask the program, one question at a time; its answers move the charts and the picture, which follow by
// themselves where they can; the picture plays.

import { Film } from "./film.js";
import { LivePass } from "./livepass.js";
import { Scene } from "./scene.js";
import { Strips } from "./strips.js";

export function start(root, page) { return new Pass(root, page); }

export class Pass {
    constructor(root, page) {
        this.root = root;
        this.page = page;
        this.waiting = [];
        this.asking = false;
        this.time = null;
        this.playing = false;
        this.chosen = false; // whether a hand has chosen the moment; until then the picture rests where it tells most
        this.find = name => root.querySelector(`[data-${name}]`);
        this.scene = new Scene(this.find("scene"));
        this.film = new Film(this.find("film"), this.scene, time => this.go(time, true));
        this.strips = new Strips(this.find("strips"), (time, held) => { if (held || !this.playing) this.go(time, held); });
        this.live = new LivePass(this);
        this.ends = [];
        this.narrow = matchMedia("(max-width: 61.99rem)");
        this.listen(this.narrow, "change", () => this.unfold(false));
        this.listen(root, "input", event => this.input(event));
        this.listen(root, "change", event => this.change(event));
        this.listen(root, "click", event => this.click(event));
        this.listen(root, "keydown", event => this.playerKey(event));
        this.listen(this.film.root, "pointermove", event => this.film.drag(event));
        this.listen(document, "keydown", event => this.pageKey(event));
        const dark = matchMedia("(prefers-color-scheme: dark)");
        this.listen(dark, "change", () => this.fit());
        this.sizes = new ResizeObserver(() => this.fit());
        this.sizes.observe(this.find("scene").parentElement);
        this.sizes.observe(this.find("strips"));
        this.sizes.observe(this.film.root);
        document.fonts?.ready.then(() => this.fit());
        this.marks();
        this.unfold(false);
    }

    listen(target, name, heard) {
        target.addEventListener(name, heard);
        this.ends.push(() => target.removeEventListener(name, heard));
    }

    // Where there is little room only the pitch is shown, until all curves are asked for.
    unfold(isAll) {
        const button = this.find("curves"), isFolded = this.narrow.matches && !isAll;
        button.setAttribute("aria-expanded", String(!isFolded));
        button.textContent = isFolded ? "All curves" : "The pitch alone";
        this.strips.fold(isFolded);
    }

    stop() {
        this.pause();
        this.ends.forEach(end => end());
        this.sizes.disconnect();
        this.strips.stop();
        this.film.stop();
        this.live.stop();
    }

    fit() {
        if (this.stopped) return;
        this.scene.fit();
        this.strips.fit();
        this.film.draw();
        if (this.time !== null) this.scene.draw(this.time);
    }

    // A state at rest, from the program.
    show(frame) {
        const said = this.take(frame, true);
        this.live.caught(said.told);
        this.refusals("");
    }

    // What the program has recorded of the state at rest: from here on sliders need not wait for it.
    follow(live) { return this.live.follow(live); }

    // One answer: structure as JSON, numbers as single precision.
    take(frame, atRest) {
        const said = JSON.parse(frame.structure);
        if (said.refused) {
            const place = said.key && this.root.querySelector(`[data-refusal="${said.key}"]`);
            if (place) place.textContent = said.refused;
            return said;
        }
        const bytes = frame.numbers, numbers = new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
        if (atRest) this.live.rest(said.state);
        this.strips.show(said.charts, numbers, atRest);
        this.told = said.scene;
        this.isAhead = false;
        this.scene.show(said.scene, numbers.subarray(this.strips.length));
        this.from = this.strips.from;
        this.to = this.strips.to;
        this.rest = said.scene.rest;
        this.turned = said.scene.turned; // what is behind is the car after the change
        if (said.scene.road) this.chosen = false; // another road, other moments
        this.film.to = this.to;
        this.film.show(said.scene.phases, atRest);
        this.find("waiting").hidden = true;
        const former = said.scene.formerName;
        this.write("[data-behind]", former ? `The tint behind it: ${former === "as described" ? "the car as described" : former}.` : "");
        this.go(this.chosen || this.playing ? this.time : this.rest, false);
        for (const [key, text] of Object.entries(said.notes)) this.write(`[data-note="${key}"]`, text);
        if (atRest) for (const [key, text] of Object.entries(said.values)) this.stand(key, text);
        return said;
    }

    write(selector, text) {
        const place = this.root.querySelector(selector);
        if (place && place.textContent !== text) place.textContent = text;
    }

    stand(key, text) {
        const slider = this.root.querySelector(`[data-setting="${key}"]`), exact = this.root.querySelector(`[data-exact="${key}"]`);
        if (!slider) return;
        slider.value = text;
        slider.setAttribute("aria-valuetext", `${text} ${slider.dataset.unit}`);
        if (exact) exact.value = text;
    }

    refusals(text, key) {
        for (const place of this.root.querySelectorAll(key ? `[data-refusal="${key}"]` : "[data-refusal]")) place.textContent = text;
    }

    input(event) {
        const key = event.target.dataset?.setting;
        if (event.target.hasAttribute?.("data-scrub")) {
            if (this.from !== undefined) this.go(this.film.timeAt(event.target.value / 1000), true);
            return;
        }
        if (!key) return;
        const text = event.target.value, exact = this.root.querySelector(`[data-exact="${key}"]`);
        if (exact) exact.value = text;
        event.target.setAttribute("aria-valuetext", `${text} ${event.target.dataset.unit}`);
        this.moved(key, text);
        this.ask({ key, text, last: false, since: event.timeStamp });
    }

    // Once a frame, however often a hand moves a slider in it.
    moved(key, text) {
        this.newest = { key, text };
        if (this.following) return;
        this.following = requestAnimationFrame(() => {
            this.following = 0;
            const { key, text } = this.newest;
            if (this.live.move(key, text)) this.ahead(key); else this.unmoved(key);
        });
    }

    // Why there are no curves the program says.
    unmoved() {}

    change(event) {
        const from = event.target.dataset ?? {};
        if (from.setting) this.ask({ key: from.setting, text: event.target.value, last: true, since: event.timeStamp });
        else if (from.exact) this.ask({ key: from.exact, text: event.target.value, last: true, since: event.timeStamp });
        else if ("stretch" in from) {
            this.scene.stretch = Number(event.target.value);
            this.film.draw();
            this.scene.draw(this.time);
        }
    }

    click(event) {
        const button = event.target.closest?.("button");
        if (button?.dataset.reset) this.ask({ key: button.dataset.reset, text: "", last: true, since: event.timeStamp });
        else if (button?.hasAttribute("data-play")) this.playing ? this.settle() : this.play();
        else if (button?.hasAttribute("data-curves")) this.unfold(button.getAttribute("aria-expanded") === "false");
        else this.film.click(event);
    }

    // One question is under way at a time; of those that pile up for one slider meanwhile only the newest is asked.
    ask(question) {
        const last = this.waiting[this.waiting.length - 1];
        if (last && !last.last && last.key === question.key) this.waiting.pop();
        this.waiting.push(question);
        if (!this.asking) this.pump();
    }

    async pump() {
        this.asking = true;
        try {
            while (this.waiting.length > 0) {
                const question = this.waiting.shift(), asked = performance.now();
                const frame = await this.page.invokeMethodAsync(question.last ? "Commit" : "Move", question.key, question.text);
                const answered = performance.now();
                this.refusals("", question.key);
                const said = this.take(frame, question.last);
                if (said.refused && question.last) this.live.forget(question.key);
                if (this.waiting.length === 0) {
                    cancelAnimationFrame(this.following);
                    this.following = 0;
                    this.live.caught(said.told);
                } else if (this.live.show()) this.ahead(question.key); // the slider has gone on meanwhile, and the curves with it
                const drawn = performance.now();
                requestAnimationFrame(() => this.tell(question, asked, answered, drawn, said));
            }
        } finally {
            // A lost program is told of elsewhere on the page; when it is back, the next move asks again.
            this.asking = false;
        }
    }

    // For whoever measures: where the time went between a slider's event and the next frame, ms.
    tell(question, asked, answered, drawn, said) {
        const shown = performance.now();
        this.root.dispatchEvent(new CustomEvent("heaveline-frame", {
            bubbles: true,
            detail: {
                key: question.key,
                last: question.last,
                total: shown - question.since,
                waited: asked - question.since,
                compute: said.compute,
                transfer: answered - asked - said.compute,
                drawing: drawn - answered,
                frame: shown - drawn,
                refused: Boolean(said.refused),
            },
        }));
    }

    // For whoever measures: curves that did not wait for the program.
    ahead(key) {
        [this.from, this.to] = [this.strips.from, this.strips.to];
        this.isAhead = true; // the film is still that of before
        this.go(this.time, false);
        this.root.dispatchEvent(new CustomEvent("heaveline-ahead", { bubbles: true, detail: { key, compute: this.live.computed } }));
    }

    go(time, isHand) {
        if (this.from === undefined) return;
        if (isHand) {
            this.pause();
            this.chosen = true;
        }
        this.time = Math.min(this.to, Math.max(this.from, time));
        this.scene.draw(this.time);
        this.strips.cursor(this.time);
        this.film.mark(this.time);
        const scrub = this.find("scrub"), words = `${this.time.toFixed(2).replace("-", "−")} s`, said = this.said();
        scrub.value = Math.round(1000 * this.film.place(this.time));
        scrub.setAttribute("aria-valuetext", `${words}${this.within()}: ${said}`);
        this.find("time").textContent = words;
        this.find("said").textContent = said;
    }

    // How the car lies, in words: after the change, and before it. At a moment of the film the program has rounded it, for curve, film and picture.
    said() {
        const lie = who => {
            const pitch = this.scene.pitch(who, this.time), size = this.rounded(who) ?? Math.abs(pitch).toFixed(1);
            return size === "0.0" ? "level" : `nose ${size}° ${pitch > 0 ? "up" : "down"}`;
        };
        const { now, former } = this.scene, [after, before] = this.turned && former ? [former, now] : [now, former];
        return lie(after) + (before ? `, was ${lie(before).replace("nose ", "")}` : "");
    }

    rounded(who) {
        const isTold = who === this.scene.now && !this.isAhead;
        return isTold ? this.film.phases.find(([time]) => Math.abs(time - this.time) < 1e-6)?.[2] : undefined;
    }

    within() {
        const band = this.strips.bands.find(one => this.time >= one.from && this.time <= one.to);
        return band ? `, ${band.label}` : "";
    }

    play() {
        if (this.from === undefined) return;
        this.time = this.from;
        this.playing = true;
        this.marks();
        let before = null;
        const step = now => {
            if (!this.playing) return;
            const gone = before === null ? 0 : (now - before) / 1000 * Number(this.find("rate").value);
            before = now;
            this.go(this.time >= this.to ? this.from : this.time + gone, false);
            this.frame = requestAnimationFrame(step);
        };
        this.frame = requestAnimationFrame(step);
    }

    pause() {
        this.playing = false;
        cancelAnimationFrame(this.frame);
        this.marks();
    }

    // Driven enough: back to where the picture tells most.
    settle() {
        this.pause();
        this.chosen = false;
        this.go(this.rest, false);
    }

    marks() {
        const button = this.find("play");
        if (!button) return;
        button.textContent = this.playing ? "Rest" : "Drive it";
    }

    playerKey(event) {
        const on = event.target;
        if (this.film.key(event)) return;
        if (!on.hasAttribute?.("data-scene") && !on.hasAttribute?.("data-scrub")) return;
        const step = event.shiftKey ? 0.1 : 0.01;
        const act = {
            " ": () => this.playing ? this.settle() : this.play(),
            ArrowRight: () => this.go(this.time + step, true),
            ArrowUp: () => this.go(this.time + step, true),
            ArrowLeft: () => this.go(this.time - step, true),
            ArrowDown: () => this.go(this.time - step, true),
            Home: () => this.go(this.from, true),
            End: () => this.go(this.to, true),
        }[event.key];
        if (!act || event.ctrlKey || event.altKey || event.metaKey) return;
        event.preventDefault();
        act();
    }

    pageKey(event) {
        const typing = event.target.matches?.("input:not([type=range]):not([type=radio]), textarea");
        if (!(event.ctrlKey || event.metaKey) || event.altKey || typing) return;
        const key = event.key.toLowerCase();
        if (key === "z" && !event.shiftKey) { event.preventDefault(); this.page.invokeMethodAsync("Undo"); }
        else if (key === "y" || key === "z") { event.preventDefault(); this.page.invokeMethodAsync("Redo"); }
    }
}
