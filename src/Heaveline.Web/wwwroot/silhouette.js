// One vehicle as the pictures of the pass page draw it: lines as path text from the program (SceneCar), places moved by what was recorded.
// Centimetres, x forward from the rear axle, y down from the road; the pen comes scaled. No outline is made up here.

// Where the far side is drawn: this slant alone gives the picture its depth.
export const far = { x: 10, y: -6 };

const inks = [
    "skin", "skin-far", "skin-line", "pane", "tyre", "tyre-edge", "rim", "well", "person", "cargo", "former", "chalk", "front-part", "rear-part",
    "paper", "text", "road", "road-side", "road-edge", "beam",
];

// The reader's colours, from the style sheet.
export function carInks(element = document.documentElement) {
    const style = getComputedStyle(element);
    const short = name => name.replace(/-(.)/, (_, letter) => letter.toUpperCase());
    return Object.fromEntries(inks.map(name => [short(name), style.getPropertyValue("--" + name).trim()]));
}

export class Silhouette {
    constructor(car) {
        this.car = car;
        this.length = 100 * car.wheelbase;
        this.radius = 100 * car.radius;
        this.outline = new Path2D(car.outline);
        this.glass = car.glass.map(text => new Path2D(text));
        this.creases = car.creases.map(text => new Path2D(text));
        this.panels = car.panels.map(text => new Path2D(text));
        this.people = car.people.map(person => ({ ...person, path: new Path2D(person.body) }));
        this.panes = new Path2D();
        this.glass.forEach(path => this.panes.addPath(path));
    }

    // How the body lies: front, rear = its heights over the axles from the state described, cm. It turns about the road under its rear axle.
    turn(pose) { return -Math.atan2(pose.front - pose.rear, this.length); }

    // A place of the body after its movement.
    place(pose, x, y) {
        const a = this.turn(pose);
        return [x * Math.cos(a) - y * Math.sin(a), -pose.rear + x * Math.sin(a) + y * Math.cos(a)];
    }

    onBody(pen, pose, draw) {
        pen.save();
        pen.translate(0, -pose.rear);
        pen.rotate(this.turn(pose));
        draw();
        pen.restore();
    }

    // The former state: a tint without wheels.
    tint(pen, pose, ink) {
        this.onBody(pen, pose, () => {
            pen.globalAlpha = 0.5;
            pen.fillStyle = ink.former;
            for (const path of [this.outline, ...this.panels]) pen.fill(path);
            pen.globalAlpha = 1;
            pen.strokeStyle = ink.former;
            pen.lineWidth = 1.6;
            pen.stroke(this.outline);
        });
    }

    // pose: front, rear, wheels and farWheels (front, rear) in cm, spin in radians; touched: which stops are met, bump and rebound, front and rear.
    draw(pen, pose, ink, plain = false) {
        const { car, radius } = this, hubs = [[this.length, -radius - pose.wheels[0]], [0, -radius - pose.wheels[1]]];
        const farHubs = [[this.length + far.x, -radius - pose.farWheels[0] + far.y], [far.x, -radius - pose.farWheels[1] + far.y]];
        pen.lineJoin = "round";
        pen.lineCap = "round";
        if (!car.two) for (const [x, y] of farHubs) this.disc(pen, x, y, radius, ink.skinFar, ink.tyre, 3);
        if (car.arch > 0) this.onBody(pen, pose, () => this.wells(pen, ink));
        hubs.forEach((hub, i) => this.wheel(pen, hub, pose.spin, i, ink));
        if (car.two) this.arms(pen, pose, hubs, ink);
        this.onBody(pen, pose, () => this.body(pen, ink));
        if (!plain) hubs.forEach((hub, i) => this.strut(pen, pose, hub, i, ink));
        hubs.forEach(([x, y], i) => {
            if (car.solid[i]) this.axle(pen, [x, y], [x + 1.3 * (farHubs[i][0] - x), y + 1.3 * (farHubs[i][1] - y)], ink);
        });
    }

    disc(pen, x, y, r, fill, stroke, width) {
        pen.beginPath();
        pen.arc(x, y, r, 0, 2 * Math.PI);
        pen.fillStyle = fill;
        pen.fill();
        if (!stroke) return;
        pen.strokeStyle = stroke;
        pen.lineWidth = width;
        pen.stroke();
    }

    line(pen, points, colour, width) {
        pen.beginPath();
        points.forEach(([x, y], i) => i === 0 ? pen.moveTo(x, y) : pen.lineTo(x, y));
        pen.strokeStyle = colour;
        pen.lineWidth = width;
        pen.stroke();
    }

    wells(pen, ink) {
        const r = 100 * this.car.arch * 1.02, sill = 100 * this.car.sill, rise = Math.asin(Math.min(1, (this.radius - sill) / r));
        pen.fillStyle = ink.well;
        for (const x of [0, this.length]) {
            pen.beginPath();
            pen.arc(x, -this.radius, r, Math.PI - rise, rise);
            pen.closePath();
            pen.fill();
        }
    }

    wheel(pen, [x, y], spin, i, ink) {
        const r = this.radius, rim = this.car.two ? 0.8 : 0.66;
        this.disc(pen, x, y, r, ink.tyre, ink.tyreEdge, 1.4);
        this.disc(pen, x, y, rim * r, ink.rim);
        pen.globalAlpha = 0.55;
        for (let k = 0; k < 5; k++) {
            const a = spin + 0.4 * Math.PI * k, [c, s] = [r * Math.cos(a), r * Math.sin(a)];
            this.line(pen, [[x + 0.2 * c, y + 0.2 * s], [x + (rim - 0.06) * c, y + (rim - 0.06) * s]], ink.tyre, 3.2);
        }
        pen.globalAlpha = 1;
        this.disc(pen, x, y, 0.15 * r, i === 0 ? ink.frontPart : ink.rearPart, ink.rim, 1.5);
    }

    // A solid axle is a bar between two hubs.
    axle(pen, hub, farHub, ink) {
        this.line(pen, [hub, farHub], ink.skinLine, 7);
        this.disc(pen, farHub[0], farHub[1], 5, ink.skinLine);
    }

    arms(pen, pose, hubs, ink) {
        const { towers, pivot } = this.car;
        this.line(pen, [this.place(pose, 100 * towers[0][0], -100 * towers[0][1]), hubs[0]], ink.skinLine, 6);
        if (pivot) this.line(pen, [this.place(pose, 100 * pivot[0], -100 * pivot[1]), hubs[1]], ink.skinLine, 6);
    }

    body(pen, ink) {
        const { car } = this;
        const filled = (path, fill, width) => {
            pen.fillStyle = fill;
            pen.fill(path);
            pen.strokeStyle = ink.skinLine;
            pen.lineWidth = width;
            pen.stroke(path);
        };
        if (!car.two) {
            pen.save();
            pen.translate(0.7 * far.x, 0.7 * far.y);
            pen.fillStyle = ink.skinFar;
            pen.fill(this.outline);
            pen.restore();
        }
        for (const panel of this.panels) filled(panel, ink.skinFar, 1.4);
        if (car.open && !car.two) this.crew(pen, ink);
        filled(this.outline, ink.skin, 1.7);
        for (const pane of this.glass) filled(pane, ink.pane, 1.1);
        if (!car.open) {
            pen.save();
            pen.clip(this.panes);
            this.crew(pen, ink);
            pen.restore();
        }
        if (car.two) this.crew(pen, ink);
        for (const piece of car.luggage) this.piece(pen, piece, ink);
        pen.strokeStyle = ink.skinLine;
        pen.lineWidth = 1.2;
        pen.globalAlpha = 0.45;
        for (const crease of this.creases) pen.stroke(crease);
        pen.globalAlpha = 1;
        this.disc(pen, 100 * car.lamp[0], -100 * car.lamp[1], car.two ? 9 : 7.5, ink.chalk, ink.skinLine, 1.2);
        pen.fillStyle = ink.rearPart;
        pen.beginPath();
        pen.roundRect(100 * car.tail[0] - 4, -100 * car.tail[1] - 8, 8, 16, 3);
        pen.fill();
    }

    crew(pen, ink) {
        for (const person of this.people) {
            pen.save();
            if (person.far) {
                pen.translate(0.7 * far.x, 0.7 * far.y);
                pen.globalAlpha = 0.72;
            }
            pen.strokeStyle = ink.pane;
            pen.lineWidth = 1.3;
            pen.fillStyle = ink.person;
            pen.fill(person.path);
            pen.stroke(person.path);
            this.disc(pen, 100 * person.head[0], -100 * person.head[1], 100 * person.radius, ink.person, ink.pane, 1.3);
            pen.restore();
        }
    }

    // Luggage: a box with a strap, as if the sheet before it were cut away.
    piece(pen, [x, z, long, high], ink) {
        const [w, h] = [100 * long, 100 * high], left = 100 * x - w / 2, top = -100 * z - h / 2;
        pen.beginPath();
        pen.roundRect(left, top, w, h, 5);
        pen.fillStyle = ink.cargo;
        pen.fill();
        pen.strokeStyle = ink.skinLine;
        pen.lineWidth = 1.3;
        pen.stroke();
        pen.globalAlpha = 0.5;
        this.line(pen, [[left + w / 2, top], [left + w / 2, top + h]], ink.skinLine, 1.2);
        pen.globalAlpha = 1;
    }

    // From the hub to the body: rungs that close up are the spring, the tube over its rod is the damper, the wedge is the stop.
    strut(pen, pose, hub, i, ink) {
        const { car } = this, tower = car.towers[i], colour = i === 0 ? ink.frontPart : ink.rearPart;
        const top = this.place(pose, 100 * tower[0], -100 * tower[1]);
        let foot = [hub[0], hub[1] - 3];
        if (car.two && i === 1 && car.pivot) {
            const pivot = this.place(pose, 100 * car.pivot[0], -100 * car.pivot[1]);
            foot = [hub[0] + 0.42 * (pivot[0] - hub[0]), hub[1] + 0.42 * (pivot[1] - hub[1])];
        }
        const dx = top[0] - foot[0], dy = top[1] - foot[1], length = Math.hypot(dx, dy) || 1, nx = -dy / length, ny = dx / length;
        const at = (share, aside) => [foot[0] + dx * share + nx * aside, foot[1] + dy * share + ny * aside];
        pen.globalAlpha = 0.74;
        this.line(pen, [at(-0.02, 0), at(1.03, 0)], ink.paper, 19);
        pen.globalAlpha = 1;
        pen.lineCap = "butt";
        this.line(pen, [at(0.5, 0), at(1, 0)], colour, 6.2);
        this.line(pen, [at(0, 0), at(0.62, 0)], colour, 2.2);
        pen.lineCap = "round";
        const rungs = 9;
        for (let k = 0; k < rungs; k++) {
            const half = 8.2 * (0.72 + 0.28 * Math.sin(Math.PI * k / (rungs - 1))) * (car.two ? 0.62 : 1), share = 0.16 + 0.72 * k / (rungs - 1);
            this.line(pen, [at(share, -half), at(share, half)], colour, 2.6);
        }
        const [bump, rebound] = pose.touched ? pose.touched[i] : [false, false];
        this.wedge(pen, [at(1, -11), at(1, 11), at(0.9, 5), at(0.9, -5)], bump, ink);
        if (rebound) this.wedge(pen, [at(0.1, -11), at(0.1, 11), at(0.2, 5), at(0.2, -5)], true, ink);
    }

    wedge(pen, corners, isMet, ink) {
        pen.beginPath();
        corners.forEach(([x, y], k) => k === 0 ? pen.moveTo(x, y) : pen.lineTo(x, y));
        pen.closePath();
        if (isMet) {
            pen.fillStyle = ink.chalk;
            pen.fill();
        }
        pen.strokeStyle = ink.skinLine;
        pen.lineWidth = isMet ? 2 : 1.2;
        pen.stroke();
    }
}
