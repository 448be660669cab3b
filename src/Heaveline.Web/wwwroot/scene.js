// The moving picture of a pass: the car drives to the right over its road, and leaves lines in the air where its nose, its tail and a head have been.
// Movements and road come from the program (SceneMotion, SceneRoad). Centimetres around the rear axle until the pen scales them; x forward, y down.

import { carInks, Silhouette } from "./silhouette.js";

const perSample = 6; // front body, rear body, front wheel, rear wheel, far front wheel, far rear wheel
const near = { x: -20, y: 12 }, beyond = { x: 34, y: -20 }; // edges of the road
const wakes = [
    { key: "nose", name: "nose", ink: "frontPart", dash: [], width: 2.6 },
    { key: "rump", name: "tail", ink: "rearPart", dash: [9, 6], width: 2.6 },
    { key: "head", name: "head", ink: "text", dash: [1.5, 4], width: 1.8 },
];

export class Scene {
    constructor(canvas) {
        this.canvas = canvas;
        this.pen = canvas.getContext("2d");
        this.stretch = 3;
        this.time = 0;
        this.fit();
    }

    fit() {
        const box = this.canvas.parentElement.getBoundingClientRect();
        const ratio = Math.min(2, window.devicePixelRatio || 1);
        this.width = Math.max(50, Math.floor(box.width));
        this.height = Math.max(50, Math.floor(box.height));
        this.ratio = ratio;
        if (this.canvas.width !== Math.floor(this.width * ratio) || this.canvas.height !== Math.floor(this.height * ratio)) {
            this.canvas.width = Math.floor(this.width * ratio);
            this.canvas.height = Math.floor(this.height * ratio);
        }
        this.ink = carInks(this.canvas);
    }

    // scene: structure; numbers: the motion now, the former motion and, when it is another one, the road.
    show(scene, numbers) {
        const now = perSample * scene.samples, former = perSample * scene.formerSamples;
        this.scene = scene;
        this.now = { car: scene.now, drawn: new Silhouette(scene.now), motion: numbers.subarray(0, now), samples: scene.samples, start: scene.start };
        this.former = scene.former
            ? {
                car: scene.former, drawn: new Silhouette(scene.former), motion: numbers.subarray(now, now + former), samples: scene.formerSamples,
                start: scene.formerStart,
            }
            : null;
        if (scene.road) {
            const { from, step, n, far: apart } = scene.road, heights = numbers.slice(now + former, now + former + n);
            this.told = { from, step, heights, farHeights: apart ? numbers.slice(now + former + n, now + former + 2 * n) : heights };
        }
        this.road = this.told;
    }

    // Another motion of the same car over the same road, at another speed, its heights another share of what they were; with nothing behind it.
    follow({ motion, start, samples, speed, higher, alone }) {
        this.now = { ...this.now, motion, start, samples };
        this.scene = { ...this.scene, speed };
        if (alone) this.former = null;
        const raised = heights => higher === 1 ? heights : heights.map(height => higher * height);
        if (this.told) this.road = { ...this.told, heights: raised(this.told.heights), farHeights: raised(this.told.farHeights) };
    }

    value(who, time, k) {
        const place = Math.min(who.samples - 1, Math.max(0, (time - who.start) / this.scene.step));
        const i = Math.max(0, Math.min(who.samples - 2, Math.floor(place))), from = perSample * i + k;
        return who.motion[from] + (who.samples > 1 ? (place - i) * (who.motion[from + perSample] - who.motion[from]) : 0);
    }

    // Movements of a car at a time, cm. Enlarged is what moves, from how it stood at the start; how it stands stays to scale.
    at(who, time) {
        const value = k => 100 * (who.motion[k] + this.stretch * (this.value(who, time, k) - who.motion[k]));
        return {
            front: value(0), rear: value(1), wheels: [value(2), value(3)], farWheels: [value(4), value(5)],
            spin: this.scene.speed * time / who.car.radius, touched: this.touched(who, time),
        };
    }

    // Which stops are met, by the travel as it was computed.
    touched(who, time) {
        return [0, 1].map(i => {
            const travel = this.value(who, time, 2 + i) - this.value(who, time, i), { bump, rebound } = who.car;
            return [bump[i] !== null && travel > bump[i], rebound[i] !== null && travel < rebound[i]];
        });
    }

    // Nose up positive, degrees, from how it stood.
    pitch(who, time) {
        const moved = k => this.value(who, time, k) - who.motion[k];
        return Math.atan2(moved(0) - moved(1), who.car.wheelbase) * 180 / Math.PI;
    }

    // Height of the road, cm, at a distance from its beginning, m.
    ground(x, heights = this.road?.heights) {
        const road = this.road;
        if (!road || heights.length === 0) return 0;
        const place = (x - road.from) / road.step;
        if (place <= 0) return 0;
        const i = Math.floor(place);
        const last = heights.length - 1;
        return 100 * this.stretch * (i >= last ? heights[last] : heights[i] + (place - i) * (heights[i + 1] - heights[i]));
    }

    // What is seen: pixels for a centimetre, and where the rear axle stands on the road.
    view(width, height, pad, room = 1, around = 1.5) {
        const car = this.now.car, long = 100 * (car.front - car.rear);
        const tall = 100 * car.top + room * (24 + 14 * (this.stretch - 1)), under = room * (26 + 9 * (this.stretch - 1));
        const scale = Math.min((height - pad.top - pad.low) / (tall + under), width / (long * around));
        const middle = 50 * (car.front + car.rear), wide = width / scale > 1.9 * long;
        return { scale, x: (wide ? 0.62 : 0.58) * width - scale * middle, y: height - pad.low - scale * under };
    }

    draw(time) {
        this.time = time;
        if (!this.scene) return;
        const { pen, ink, width, height } = this;
        const view = this.seen = this.view(width, height, { top: width > 640 ? 30 : 58, low: 20 });
        pen.setTransform(this.ratio, 0, 0, this.ratio, 0, 0);
        pen.clearRect(0, 0, width, height);
        pen.translate(view.x, view.y);
        pen.scale(view.scale, view.scale);
        this.edges = [-view.x / view.scale - 60, (width - view.x) / view.scale + 60];
        const axle = this.scene.speed * time - this.now.car.wheelbase; // metres of road under the rear axle
        const place = this.at(this.now, time);
        this.surface(axle);
        this.air(time);
        this.beam(this.now, place, false);
        if (this.former) {
            const behind = this.at(this.former, time);
            this.beam(this.former, behind, true);
            this.former.drawn.tint(pen, behind, ink);
        }
        this.now.drawn.draw(pen, place, ink);
        this.face(axle);
        this.names(view, place);
    }

    edge(axle, offset, heights) {
        const points = [];
        for (let x = this.edges[0]; x <= this.edges[1]; x += 6) points.push([x + offset.x, offset.y - this.ground(x / 100 + axle, heights)]);
        return points;
    }

    run(points) {
        this.pen.beginPath();
        points.forEach(([x, y], i) => i === 0 ? this.pen.moveTo(x, y) : this.pen.lineTo(x, y));
    }

    // The road's upper side, between its edges, with its middle line.
    surface(axle) {
        const { pen, ink, road } = this, away = this.edge(axle, beyond, road?.farHeights);
        pen.setLineDash([]);
        this.run([...this.edge(axle, near, road?.heights), ...away.slice().reverse()]);
        pen.fillStyle = ink.road;
        pen.fill();
        this.run(away);
        pen.strokeStyle = ink.roadEdge;
        pen.lineWidth = 1.6;
        pen.stroke();
        pen.strokeStyle = ink.paper;
        pen.lineWidth = 2.6;
        pen.globalAlpha = 0.75;
        for (let metre = Math.floor(this.edges[0] / 100 + axle); metre < this.edges[1] / 100 + axle; metre++) {
            if (metre % 3 !== 0) continue;
            this.run([0, 25, 50, 75, 100].map(more => [100 * (metre - axle) + 7 + more, -4 - this.ground(metre + more / 100)]));
            pen.stroke();
        }
        pen.globalAlpha = 1;
    }

    // The cut through the road before the wheels, with the ruler on it.
    face(axle) {
        const { pen, ink } = this, points = this.edge(axle, near, this.road?.heights), low = (this.height - this.seen.y) / this.seen.scale + 20;
        this.run([...points, [this.edges[1] + near.x, low], [this.edges[0] + near.x, low]]);
        pen.fillStyle = ink.roadSide;
        pen.fill();
        this.run(points);
        pen.strokeStyle = ink.roadEdge;
        pen.lineWidth = 1.6;
        pen.stroke();
        for (let metre = Math.ceil(this.edges[0] / 100 + axle); metre <= this.edges[1] / 100 + axle; metre++) {
            const x = 100 * (metre - axle) + near.x, y = near.y - this.ground(metre) + 3;
            this.run([[x, y], [x, y + (metre % 5 ? 8 : 14)]]);
            pen.stroke();
        }
        this.metres = Math.ceil((this.edges[1] - this.edges[0]) / 100) > 9 ? 5 : 2;
        this.axle = axle;
    }

    // Where a place of the body has been, only behind the car; [x, y] from the car to the left edge.
    wake(who, [x, z], time) {
        const car = who.car, from = 100 * car.rear - 24, share = x / car.wheelbase, points = [];
        for (let px = from; px > this.edges[0]; px -= 6) {
            const then = time + (px / 100 - x) / this.scene.speed;
            const moved = k => 100 * (who.motion[k] + this.stretch * (this.value(who, then, k) - who.motion[k]));
            const [front, rear] = [moved(0), moved(1)];
            points.push([px, -100 * z - rear - (front - rear) * share]);
        }
        return points;
    }

    air(time) {
        const { pen, ink } = this;
        pen.lineCap = "round";
        pen.setLineDash([]);
        if (this.former) {
            pen.strokeStyle = ink.former;
            pen.globalAlpha = 0.5;
            pen.lineWidth = 6;
            for (const key of ["nose", "rump"]) {
                this.run(this.wake(this.former, this.former.car[key], time));
                pen.stroke();
            }
            pen.globalAlpha = 1;
        }
        this.tracks = wakes.map(wake => ({ ...wake, points: this.wake(this.now, this.now.car[wake.key], time) }));
        for (const { points, ink: name, dash, width } of this.tracks) {
            this.run(points);
            pen.setLineDash(dash);
            pen.strokeStyle = ink[name];
            pen.lineWidth = width;
            pen.stroke();
        }
        pen.setLineDash([]);
    }

    // The dipped beam under its cut-off: the drop as described, and what the body's pitch adds.
    beam(who, place, isFormer) {
        const { pen, ink } = this, { car, drawn } = who;
        if (car.drop === null) return;
        const [x, y] = drawn.place(place, 100 * car.lamp[0], -100 * car.lamp[1]);
        const fall = car.drop + Math.tan(drawn.turn(place)), reach = this.edges[1] - x;
        if (reach <= 0) return;
        this.run([[x, y], [x + reach, y + fall * reach]]);
        pen.setLineDash(isFormer ? [7, 6] : []);
        pen.strokeStyle = isFormer ? ink.former : ink.beam;
        pen.lineWidth = 1.6;
        pen.stroke();
        pen.setLineDash([]);
        if (isFormer) return;
        const light = pen.createLinearGradient(x, 0, x + Math.max(1, reach), 0);
        light.addColorStop(0, ink.chalk);
        light.addColorStop(1, ink.chalk + "00");
        this.run([[x, y], [x + reach, y + fall * reach], [x + reach, y + (fall + 0.16) * reach]]);
        pen.closePath();
        pen.globalAlpha = 0.35;
        pen.fillStyle = light;
        pen.fill();
        pen.globalAlpha = 1;
    }

    // Words stand at their size, whatever the picture's.
    names(view, place) {
        const { pen, ink, width } = this, toPixel = ([x, y]) => [view.x + view.scale * x, view.y + view.scale * y];
        pen.setTransform(this.ratio, 0, 0, this.ratio, 0, 0);
        const heights = [];
        for (const { name, ink: colour, points } of this.tracks) {
            const seen = points.map(toPixel).filter(([x]) => x >= 4 && x <= width);
            if (seen.length < 8) continue;
            const [, y] = seen[seen.length - 1], isLow = name === "nose";
            let at = y + (isLow ? 11 : -10);
            while (heights.some(other => Math.abs(other - at) < 15)) at += isLow ? 4 : -4;
            heights.push(at);
            this.text(name, 10, at, "left", ink[colour], true);
        }
        const first = Math.ceil((this.edges[0] / 100 + this.axle) / this.metres) * this.metres;
        for (let metre = first; metre < this.edges[1] / 100 + this.axle; metre += this.metres) {
            const x = view.x + view.scale * (100 * (metre - this.axle) + near.x);
            if (x > 18 && x < width - 24) this.text(`${metre < 0 ? "−" : ""}${Math.abs(metre)} m`, x, this.height - 10, "center", ink.text, false);
        }
        place.touched.forEach((stops, i) => {
            if (!stops[0] && !stops[1]) return;
            const tower = this.now.car.towers[i], [x, y] = toPixel(this.now.drawn.place(place, 100 * tower[0], -100 * tower[1]));
            const isRight = i === 0 ? x + 100 < width : x < 100;
            this.text("on the stop", isRight ? x + 12 : x - 12, y - 10, isRight ? "left" : "right", ink.text, true);
        });
    }

    text(words, x, y, align, colour, isBold) {
        const { pen } = this;
        pen.font = `${isBold ? "700 " : ""}13px 'Heaveline Sans', system-ui, sans-serif`;
        pen.textAlign = align;
        pen.textBaseline = "middle";
        if (isBold) {
            pen.strokeStyle = this.ink.paper;
            pen.lineWidth = 4;
            pen.lineJoin = "round";
            pen.globalAlpha = 0.85;
            pen.strokeText(words, x, y);
            pen.globalAlpha = 1;
        }
        pen.fillStyle = colour;
        pen.fillText(words, x, y);
    }

    // A small picture of a moment, without springs: a frame of the film.
    still(canvas, time) {
        if (!this.scene) return;
        const box = canvas.getBoundingClientRect(), ratio = this.ratio, [width, height] = [Math.max(20, box.width), Math.max(20, box.height)];
        canvas.width = Math.floor(width * ratio);
        canvas.height = Math.floor(height * ratio);
        const pen = canvas.getContext("2d"), view = this.view(width, height, { top: 2, low: 2 }, 0.45, 1.1);
        view.x = width / 2 - view.scale * 50 * (this.now.car.front + this.now.car.rear);
        pen.setTransform(ratio * view.scale, 0, 0, ratio * view.scale, ratio * view.x, ratio * view.y);
        const axle = this.scene.speed * time - this.now.car.wheelbase, [left, right] = [-view.x / view.scale, (width - view.x) / view.scale];
        this.now.drawn.draw(pen, this.at(this.now, time), this.ink, true);
        pen.beginPath();
        pen.moveTo(left, 200);
        for (let x = left; x <= right + 8; x += 8) pen.lineTo(x, 2 - this.ground(x / 100 + axle));
        pen.lineTo(right + 8, 200);
        pen.closePath();
        pen.fillStyle = this.ink.roadSide;
        pen.fill();
    }
}
