/* The meaning of a word, shown beside it: while it is pointed at or has the focus, and after a touch. It stays while the pointer is on it, goes with
   Escape, and is nothing new to whoever hears the page: the word carries it as its description [WCAG 2.2, 1.4.13]. */
const says = document.getElementById("term-says");
const gap = 6;
let word = null;
let waiting = 0;

const termOf = (target) => (target instanceof Element ? target.closest(".term") : null);

function show(term) {
    clearTimeout(waiting);
    word = term;
    says.textContent = term.getAttribute("aria-description");
    if (!says.matches(":popover-open")) says.showPopover();
    const at = term.getBoundingClientRect();
    const { width, height } = says.getBoundingClientRect();
    const room = document.documentElement.clientWidth;
    says.style.left = `${Math.max(gap, Math.min(at.left, room - width - gap))}px`;
    says.style.top = `${at.bottom + gap + height <= window.innerHeight ? at.bottom + gap : Math.max(gap, at.top - gap - height)}px`;
}

function hide() {
    clearTimeout(waiting);
    word = null;
    if (says.matches(":popover-open")) says.hidePopover();
}

function soon(act, after) {
    clearTimeout(waiting);
    waiting = setTimeout(act, after);
}

document.addEventListener("pointerover", (event) => {
    if (event.pointerType !== "mouse") return;
    const term = termOf(event.target);
    if (term) soon(() => term.isConnected && show(term), 150);
    else if (says.contains(event.target)) clearTimeout(waiting);
    else if (word) soon(hide, 250);
});
document.addEventListener("pointerdown", (event) => {
    if (word && termOf(event.target) !== word && !says.contains(event.target)) hide();
});
document.addEventListener("click", (event) => {
    const term = termOf(event.target);
    if (term) show(term);
});
document.addEventListener("focusin", (event) => {
    const term = termOf(event.target);
    if (term) show(term);
    else if (word) hide();
});
document.addEventListener("focusout", (event) => {
    if (event.target === word) soon(hide, 0);
});
document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && word) hide();
    const term = termOf(event.target);
    if (!term || (event.key !== "Enter" && event.key !== " ")) return;
    event.preventDefault();
    show(term);
});
document.addEventListener("scroll", () => word && hide(), { capture: true, passive: true });
