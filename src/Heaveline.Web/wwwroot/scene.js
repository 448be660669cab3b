// The moving picture of a pass: the car from its left side, to scale, on its road. Shapes and movements come from the program (SceneCar, SceneMotion,
// SceneRoad); nothing of the car's outline is made up here. x runs forward, the car faces left as in the printed figures; metres until the last step.

import { colours } from "./chart.js";

const perSample = 4; // front body, rear body, front wheel, rear wheel
const dashes = [7, 5];

export class Scene {
    constructor(canvas) {
        this.canvas = canvas;
        this.pen = canvas.getContext("2d");
        this.stretch = 1;
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
        this.ink = colours(this.canvas);
    }

    // scene: structure; numbers: the motion now, the former motion and, when it is another one, the road.
    show(scene, numbers) {
        const now = perSample * scene.samples, former = perSample * scene.formerSamples;
        this.scene = scene;
        this.now = { car: scene.now, motion: numbers.subarray(0, now), samples: scene.samples, start: scene.start };
        this.former = scene.former
            ? { car: scene.former, motion: numbers.subarray(now, now + former), samples: scene.formerSamples, start: scene.formerStart }
            : null;
        if (scene.road) {
            const heights = numbers.slice(now + former, now + former + scene.road.n);
            this.road = { from: scene.road.from, step: scene.road.step, heights };
        }
    }

    // Movements of a car at a time, between samples by a straight line.
    at(who, time) {
        const place = Math.min(who.samples - 1, Math.max(0, (time - who.start) / this.scene.step));
        const i = Math.min(who.samples - 2, Math.floor(place)), part = place - i, from = perSample * Math.max(0, i);
        const value = k => who.motion[from + k] + (who.samples > 1 ? part * (who.motion[from + perSample + k] - who.motion[from + k]) : 0);
        return {
            front: this.stretch * value(0),
            rear: this.stretch * value(1),
            frontWheel: this.stretch * value(2),
            rearWheel: this.stretch * value(3),
        };
    }

    ground(x) {
        const road = this.road;
        if (!road || road.heights.length === 0) return 0;
        const place = (x - road.from) / road.step;
        if (place <= 0) return 0;
        const i = Math.floor(place), h = road.heights;
        return this.stretch * (i >= h.length - 1 ? h[h.length - 1] : h[i] + (place - i) * (h[i + 1] - h[i]));
    }

    draw(time) {
        this.time = time;
        if (!this.scene) return;
        const { pen, ink, width, height } = this;
        const car = this.now.car;
        // Under the road there is room for its ruler, above the car for its movements.
        const ruler = 36, more = 0.10 * (this.stretch - 1);
        const scale = Math.min((height - ruler) / (car.top + 0.28 + 2 * more), width / ((car.front - car.rear) * 1.12));
        const middle = 0.5 * (car.front + car.rear), travelled = this.scene.speed * time;
        const level = height - ruler - more * scale;
        const shift = width > 700 ? 0.06 * width : 0; // the road ahead is worth more room than the road behind
        this.scale = scale;
        this.px = x => width / 2 + shift - (x - middle) * scale; // x from the front axle
        this.pz = z => level - z * scale;
        pen.setTransform(this.ratio, 0, 0, this.ratio, 0, 0);
        pen.clearRect(0, 0, width, height);
        pen.lineJoin = pen.lineCap = "round";
        const place = this.at(this.now, time);
        this.beam(this.now, place, false);
        this.vehicle(this.now, place, time);
        this.surface(travelled, level);
        this.ruler(travelled, level);
        this.gauge(this.now, place);
    }

    // A place of the body after its movement: both ends go up and down by what is recorded over the wheels.
    moved(car, place, x, z) {
        return [this.px(x), this.pz(z + place.front + (place.front - place.rear) * x / car.wheelbase)];
    }

    trace(car, place, points) {
        const { pen } = this;
        pen.beginPath();
        for (let i = 0; i < points.length; i += 2) {
            const [x, y] = this.moved(car, place, points[i], points[i + 1]);
            if (i === 0) pen.moveTo(x, y); else pen.lineTo(x, y);
        }
    }

    wheels(car, place) {
        return [[0, place.frontWheel], [-car.wheelbase, place.rearWheel]]
            .map(([x, up]) => [this.px(x), this.pz(car.radius + up), car.radius * this.scale, x]);
    }

    // The former state lies on the new body's inside and under its outline, so that both can be read.
    vehicle(who, place, time) {
        const { pen, ink } = this, car = who.car;
        const wheels = this.wheels(car, place);
        pen.setLineDash([]);
        pen.lineWidth = 1.6;
        pen.strokeStyle = ink.Third;
        for (const [x, y, r] of wheels) {
            pen.beginPath();
            pen.arc(x, y, r, 0, 2 * Math.PI);
            pen.fillStyle = ink.groundDeep;
            pen.fill();
            pen.stroke();
            pen.beginPath();
            pen.arc(x, y, 0.58 * r, 0, 2 * Math.PI);
            pen.fillStyle = ink.paper;
            pen.fill();
            pen.lineWidth = 1;
            pen.stroke();
            pen.lineWidth = 1.6;
        }
        this.trace(car, place, car.outline);
        pen.closePath();
        pen.fillStyle = ink.paper;
        pen.globalAlpha = 0.85;
        pen.fill();
        pen.globalAlpha = 1;
        if (this.former) this.ghost(time);
        pen.strokeStyle = ink.Third;
        pen.lineWidth = 2.2;
        this.trace(car, place, car.outline);
        pen.closePath();
        pen.stroke();
        car.arms.forEach((arm, i) => {
            const [x, y] = this.moved(car, place, arm[0], arm[1]);
            pen.beginPath();
            pen.moveTo(x, y);
            pen.lineTo(wheels[i][0], wheels[i][1]);
            pen.stroke();
        });
        pen.lineWidth = 1.5;
        for (const [x0, z0, x1, z1] of car.heads) {
            const [hx, hy] = this.moved(car, place, x0, z0), [x, y] = this.moved(car, place, x1, z1);
            pen.beginPath();
            pen.moveTo(hx, hy);
            pen.lineTo(x, y);
            pen.stroke();
            pen.beginPath();
            pen.arc(x, y, car.head * this.scale, 0, 2 * Math.PI);
            pen.fillStyle = ink.ground;
            pen.fill();
            pen.stroke();
        }
        wheels.forEach((wheel, i) => this.spring(car, place, wheel, i));
        for (const [x, y, r] of wheels) {
            pen.beginPath();
            pen.arc(x, y, Math.max(2, 0.10 * r), 0, 2 * Math.PI);
            pen.fillStyle = ink.Third;
            pen.fill();
        }
        if (car.lamp) {
            const [x, y] = this.moved(car, place, car.lamp[0], car.lamp[1]);
            pen.beginPath();
            pen.arc(x, y, Math.max(3, 0.05 * this.scale), 0, 2 * Math.PI);
            pen.fillStyle = ink.Second;
            pen.fill();
            pen.strokeStyle = ink.Third;
            pen.stroke();
        }
    }

    // From the hub to where the body stands above it: as long as the wheel's travel leaves it.
    spring(car, place, [x, y, r, at], i) {
        const { pen, ink } = this;
        const [, top] = this.moved(car, place, at, 2.15 * car.radius + 0.10);
        const turns = 6, half = 0.20 * r, length = y - top, end = 0.12 * length;
        pen.beginPath();
        pen.moveTo(x, y);
        pen.lineTo(x, y - end);
        for (let k = 0; k < 2 * turns; k++) pen.lineTo(x + (k % 2 ? -half : half), y - end - (k + 0.5) * (length - 2 * end) / (2 * turns));
        pen.lineTo(x, top + end);
        pen.lineTo(x, top);
        pen.moveTo(x - 1.3 * half, top);
        pen.lineTo(x + 1.3 * half, top);
        pen.strokeStyle = i === 0 ? ink.First : ink.Second;
        pen.lineWidth = 2.4;
        pen.stroke();
        pen.strokeStyle = ink.Third;
        pen.lineWidth = 1.5;
    }

    // Beside each wheel, fixed to the body: from the rebound stop to the bump stop, with a mark where the wheel is.
    gauge(who, place) {
        const { pen, ink } = this, car = who.car;
        const axles = [[0, place.frontWheel - place.front, ink.First], [-car.wheelbase, place.rearWheel - place.rear, ink.Second]];
        axles.forEach(([at, travel, colour], i) => {
            const bump = car.bump[i], rebound = car.rebound[i];
            if (bump === null && rebound === null) return;
            const x = this.px(at) + car.radius * this.scale * 1.22;
            const z = up => this.moved(car, place, at, car.radius + this.stretch * up)[1];
            const high = z(bump ?? 0.1), low = z(rebound ?? -0.1), here = z(travel / this.stretch);
            const touching = bump !== null && travel > this.stretch * bump || rebound !== null && travel < this.stretch * rebound;
            pen.strokeStyle = ink.edge;
            pen.lineWidth = 1.2;
            pen.beginPath();
            pen.moveTo(x, high);
            pen.lineTo(x, low);
            if (bump !== null) { pen.moveTo(x - 5, high); pen.lineTo(x + 5, high); }
            if (rebound !== null) { pen.moveTo(x - 5, low); pen.lineTo(x + 5, low); }
            pen.stroke();
            pen.beginPath();
            pen.arc(x, here, touching ? 6 : 4, 0, 2 * Math.PI);
            pen.fillStyle = colour;
            pen.fill();
            if (touching) {
                pen.strokeStyle = ink.Third;
                pen.lineWidth = 2;
                pen.stroke();
                // On a narrow screen the tail of the car ends at the edge: the words stand on the other side then.
                const room = this.width - x > 90;
                this.text("on the stop", room ? x + 9 : x - 9, here, room ? "left" : "right", ink.text);
            }
        });
    }

    ghost(time) {
        const { pen, ink } = this, car = this.former.car;
        const place = this.at(this.former, time);
        pen.setLineDash(dashes);
        pen.lineWidth = 1.5;
        pen.strokeStyle = ink.Fourth;
        for (const [x, y, r] of this.wheels(car, place)) {
            pen.beginPath();
            pen.arc(x, y, r, 0, 2 * Math.PI);
            pen.stroke();
        }
        this.trace(car, place, car.outline);
        pen.closePath();
        pen.stroke();
        for (const [, , x1, z1] of car.heads) {
            const [x, y] = this.moved(car, place, x1, z1);
            pen.beginPath();
            pen.arc(x, y, car.head * this.scale, 0, 2 * Math.PI);
            pen.stroke();
        }
        this.beam(this.former, place, true);
        pen.setLineDash([]);
    }

    // The dipped beam under its cut-off: the drop as described, and what the body's pitch adds.
    beam(who, place, isGhost) {
        const { pen, ink, width } = this, car = who.car;
        if (!car.lamp) return;
        const [x, y] = this.moved(car, place, car.lamp[0], car.lamp[1]);
        const pitch = (place.rear - place.front) / car.wheelbase; // nose down positive, from the state described
        const fall = car.lamp[2] + pitch, reach = x + 10;
        pen.beginPath();
        pen.moveTo(x, y);
        pen.lineTo(x - reach, y + fall * reach);
        if (isGhost) {
            pen.stroke();
            return;
        }
        const light = pen.createLinearGradient(x, 0, Math.min(0, x - width * 0.6), 0);
        light.addColorStop(0, ink.Second);
        light.addColorStop(1, "rgba(0,0,0,0)");
        pen.setLineDash([]);
        pen.strokeStyle = light;
        pen.lineWidth = 1.5;
        pen.stroke();
        pen.lineTo(x - reach, y + (fall + 0.16) * reach);
        pen.closePath();
        pen.globalAlpha = 0.20;
        pen.fillStyle = light;
        pen.fill();
        pen.globalAlpha = 1;
    }

    surface(travelled, level) {
        const { pen, ink, width, height } = this;
        pen.beginPath();
        pen.moveTo(-2, height + 2);
        for (let x = -2; x <= width + 2; x += 2) pen.lineTo(x, this.pz(this.ground(travelled + this.ahead(x))));
        pen.lineTo(width + 2, height + 2);
        pen.closePath();
        pen.fillStyle = ink.groundDeep;
        pen.fill();
        pen.beginPath();
        for (let x = -2; x <= width + 2; x += 2) {
            const y = this.pz(this.ground(travelled + this.ahead(x)));
            if (x === -2) pen.moveTo(x, y); else pen.lineTo(x, y);
        }
        pen.strokeStyle = ink.edge;
        pen.lineWidth = 1.6;
        pen.stroke();
    }

    // Distance ahead of the front axle at a pixel.
    ahead(x) { return (this.px(0) - x) / this.scale; }

    ruler(travelled, level) {
        const { pen, ink, width, height } = this;
        const every = width / this.scale > 14 ? 5 : 1, from = Math.ceil(travelled + this.ahead(width)), to = Math.floor(travelled + this.ahead(0));
        pen.strokeStyle = ink.quiet;
        pen.lineWidth = 1;
        for (let metre = from; metre <= to; metre++) {
            const x = this.px(metre - travelled);
            pen.beginPath();
            pen.moveTo(x, height - (metre % 5 ? 5 : 9));
            pen.lineTo(x, height);
            pen.stroke();
            if (metre % every === 0 && (every === 5 || metre % 2 === 0)) {
                this.text(`${metre < 0 ? "−" : ""}${Math.abs(metre)} m`, x, height - 16, "center", ink.quiet);
            }
        }
    }

    text(words, x, y, align, colour) {
        const { pen } = this;
        pen.font = "12px 'Heaveline Sans', system-ui, sans-serif";
        pen.textAlign = align;
        pen.textBaseline = "middle";
        pen.fillStyle = colour;
        pen.fillText(words, x, y);
    }
}
