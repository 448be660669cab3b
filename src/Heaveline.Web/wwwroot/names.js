// Words beside the ends of curves, and their places.

import { lines } from "./lines.js";
import { wide } from "./svg.js";

/** Names of curves in lines that fit beside them, and the room that they ask for. */
export function beside(curves, most, size) {
    let room = 0;
    for (const curve of curves) {
        curve.words = curve.name ? lines(curve.name, most, words => wide(words, size)) : [];
        for (const line of curve.words) room = Math.max(room, Math.ceil(wide(line, size)) + 10);
    }
    return room;
}

/** Moves things apart that would cover one another, each as little as it can: they bear 'at' and 'tall', and get 'y', the middle of their place. */
export function spread(things, top, bottom) {
    const sorted = [...things].sort((a, b) => a.at - b.at || a.tall - b.tall), groups = [];
    // Groups that touch are set about the middle of their places, and joined with the next as long as that one is touched too.
    for (const thing of sorted) {
        let group = { things: [thing], tall: thing.tall, middle: thing.at };
        for (;;) {
            group.middle = Math.min(Math.max(group.middle, top + group.tall / 2), Math.max(top + group.tall / 2, bottom - group.tall / 2));
            const above = groups.at(-1);
            if (!above || above.middle + above.tall / 2 <= group.middle - group.tall / 2) break;
            groups.pop();
            const all = [...above.things, ...group.things];
            group = { things: all, tall: above.tall + group.tall, middle: all.reduce((sum, one) => sum + one.at, 0) / all.length };
        }
        groups.push(group);
    }
    for (const group of groups) {
        let at = group.middle - group.tall / 2;
        for (const thing of group.things) {
            thing.y = at + thing.tall / 2;
            at += thing.tall;
        }
    }
}

/** The first place that is free among rooms taken, and takes it; null where none is. Rooms are [left, top, right, bottom]. */
export function settle(places, taken) {
    const free = places.find(([left, top, right, bottom]) =>
        !taken.some(other => left < other[2] && right > other[0] && top < other[3] && bottom > other[1]));
    if (free) taken.push(free);
    return free ?? null;
}
