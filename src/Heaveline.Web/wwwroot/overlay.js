// What stands in a chart while it is read: a line through the place, the values beside it, a measured span, an arrow from the car to what is tried.

import { inked } from "./draw.js";
import { spread } from "./names.js";
import { place as where, reading as digits } from "./scales.js";
import { against, nodeShort, percent, valuesAt } from "./stops.js";
import { put, round, say, wide } from "./svg.js";

/** Over charts. */
export function chartOverlay(svg, picture, group, at, anchor) {
    const here = group.stops[at.i], [first] = group, x = round(first.x.scale.at(here.x)), { size } = picture;
    const left = x > (picture.left + picture.right) / 2;
    const values = valuesAt(group, at.i);
    for (const panel of group) {
        if (anchor) {
            const from = round(first.x.scale.at(group.stops[anchor.i].x));
            put(svg, "rect", { x: Math.min(from, x), y: panel.top, width: Math.abs(x - from), height: panel.height, class: "span" });
            put(svg, "path", { d: `M${from} ${panel.top}V${panel.bottom}`, class: "cursor" });
        }
        put(svg, "path", { d: `M${x} ${panel.top}V${panel.bottom}`, class: "cursor" });
        const named = ({ curve }) => curve.name && panel.read.length > 1 && !picture.narrow ? `${curve.name} ` : "";
        const mine = values.filter(one => one.panel === panel)
            .map(one => ({ ...one, tall: 16, at: panel.y.scale.at(one.value), words: named(one) + digits(one.value) }))
            .filter(one => one.at >= panel.top - 1 && one.at <= panel.bottom + 1);
        // Many curves have no room for their values; the words below say them all.
        if (mine.length * 16 <= panel.height + 8) spread(mine, panel.top, panel.bottom);
        for (const one of mine) {
            put(svg, "circle", { cx: x, cy: round(one.at), r: 4, class: `here ${inked(one.curve.ink)}` });
            if (one.y === undefined) continue;
            const room = wide(one.words, size, "bold");
            const start = left ? Math.max(2, x - 10 - room) : Math.min(x + 10, picture.width - room - 2);
            say(svg, one.words, start, one.y + 4.5, `value halo strong ${inked(one.curve.ink)}`);
        }
    }
    const words = where(here.x), foot = group.findLast(panel => panel.isFoot) ?? first, room = wide(words, size, "bold") + 8;
    const middle = Math.min(picture.width - room / 2, Math.max(room / 2, x));
    put(svg, "rect", { x: round(middle - room / 2), y: foot.bottom + 6, width: round(room), height: 17, class: "tag" });
    say(svg, words, middle, foot.bottom + 19, "strong", "middle");
}

/** Over a map. */
export function mapOverlay(svg, picture, [panel], at, anchor) {
    const place = one => [round(panel.x.scale.at(panel.grid.xs[one.i])), round(panel.y.scale.at(panel.grid.ys[one.j]))], [x, y] = place(at);
    const share = against(panel, at);
    if (anchor) {
        const [fromX, fromY] = place(anchor);
        put(svg, "path", { d: `M${fromX} ${fromY}L${x} ${y}`, class: "cursor" });
        put(svg, "circle", { cx: fromX, cy: fromY, r: 5, class: "tried" });
    } else if (share !== null) {
        // From the car as it is to what is tried, at the same speed.
        const own = round(panel.y.scale.at(panel.own)), sign = y < own ? -1 : 1;
        if (Math.abs(y - own) > 24) {
            put(svg, "path", { d: `M${x} ${own}V${y - sign * 10}`, class: "lead" });
            put(svg, "path", { d: `M${x - 5} ${y - sign * 18}L${x} ${y - sign * 10}L${x + 5} ${y - sign * 18}`, class: "lead" });
        }
        put(svg, "path", { d: `M${x - 6} ${own}H${x + 6}`, class: "lead" });
    }
    put(svg, "circle", { cx: x, cy: y, r: 8, class: "tried" });
    put(svg, "circle", { cx: x, cy: y, r: 1.5, class: "tried" });
    const words = share === null ? nodeShort(panel, at) : `try ${where(panel.grid.ys[at.j])}: ${percent(share)}`;
    const room = wide(words, picture.size, "bold");
    const start = x + 14 + room <= picture.right ? x + 14 : x - 14 - room;
    say(svg, words, Math.max(picture.left + 2, start), y + 4.5, "halo strong");
}
