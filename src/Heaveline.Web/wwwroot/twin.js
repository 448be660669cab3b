// The same curves as a table, for those who read numbers rather than lines; written when it is opened.

import { place as where, reading as digits } from "./scales.js";
import { valueAt } from "./stops.js";

const rows = 21;

export class Twin {
    constructor(element) {
        this.fold = element.appendChild(document.createElement("details"));
        this.fold.className = "twin";
        this.fold.append(Object.assign(document.createElement("summary"), { textContent: "The curves as numbers" }));
        this.fold.addEventListener("toggle", () => this.write());
    }

    of(picture) {
        this.picture = picture;
        // A map has a table of its own beside it, and single points are told by the page.
        this.fold.hidden = !picture.groups.some(group => group.some(panel => panel.read?.length > 0));
        this.write();
    }

    write() {
        for (const table of this.fold.querySelectorAll(".wide-scroll")) table.remove();
        if (!this.fold.open || this.fold.hidden) return;
        for (const group of this.picture.groups) if (group.some(panel => panel.read?.length > 0)) this.fold.append(tableOf(group));
    }
}

function tableOf(group) {
    const columns = group.flatMap(panel => panel.read.map(curve => ({ panel, curve }))), { stops } = group, { x } = group[0];
    const scroll = Object.assign(document.createElement("div"), { className: "wide-scroll", tabIndex: 0 });
    const caption = `${group[0].title || group[0].y.label} by ${x.label}`;
    scroll.setAttribute("role", "region");
    scroll.setAttribute("aria-label", caption);
    const table = scroll.appendChild(document.createElement("table"));
    table.createCaption().textContent = caption;
    const head = table.createTHead().insertRow();
    const cell = (row, words, scope) => {
        const made = row.appendChild(document.createElement(scope ? "th" : "td"));
        if (scope) made.scope = scope;
        made.className = "number";
        made.textContent = words;
    };
    const unit = axis => axis.unit ? `, ${axis.unit}` : "";
    cell(head, x.label + unit(x), "col");
    for (const { panel, curve } of columns) {
        const name = curve.name && curve.name !== panel.y.label ? `${panel.title || panel.y.label}: ${curve.name}` : panel.title || panel.y.label;
        cell(head, name + unit(panel.y), "col");
    }
    const body = table.createTBody(), picked = new Set(Array.from({ length: Math.min(rows, stops.length) }, (_, k) =>
        Math.round(k * (stops.length - 1) / Math.max(1, Math.min(rows, stops.length) - 1))));
    for (const k of picked) {
        const row = body.insertRow();
        cell(row, where(stops[k].x), "row");
        for (const { curve } of columns) {
            const value = valueAt(curve, stops[k].x);
            cell(row, Number.isFinite(value) ? digits(value) : "–");
        }
    }
    return scroll;
}
