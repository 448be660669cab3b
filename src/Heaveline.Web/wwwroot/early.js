// What is chosen before a page has come to life is chosen again when it lives: the page draws itself anew then, and would forget it.
// Runs before anything is drawn, so it is no module.
(() => {
    const early = new Map();
    const note = ({ target }) => {
        if (!target.id || target.type === "file" || !target.closest("#content[data-awake=no]")) return;
        const state = target.type === "checkbox" || target.type === "radio" ? "checked" : "value";
        early.set(target.id, [state, target[state]]);
    };
    const wake = new MutationObserver(() => {
        if (!document.querySelector("#content[data-awake=yes]")) return;
        wake.disconnect();
        removeEventListener("change", note, true);
        for (const [id, [state, is]] of early) {
            const element = document.getElementById(id);
            if (!element || element[state] === is) continue;
            element[state] = is;
            for (const type of ["input", "change"]) element.dispatchEvent(new Event(type, { bubbles: true }));
        }
    });
    addEventListener("change", note, true);
    wake.observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ["data-awake"] });
})();
