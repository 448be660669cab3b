// What is done by hand before anybody hears it is done again, in the same order, when somebody does: a page draws itself anew as it comes to life and
// would forget it, and a part that a script of its own listens to (data-script) is heard a moment after that; what such a script listens to bears
// data-scripted, the program hears the rest. What was done on a page or a part that has gone since is not done. And the hand stays where it is: what
// takes the place of the element that it is on is given the focus in the same moment, without asking the program, whose answer would come late and
// take the focus from whoever has gone on meanwhile. Runs before anything is drawn, so it is no module.
(() => {
    // How long a living page may take to draw what a hand was on before, ms.
    const patience = 5000;
    let deeds = [];
    let hand = null;
    let isFree = true;

    const isAsleep = () => !document.querySelector("#content[data-awake=yes]");
    const isUnheard = (element) => isAsleep() ? element.closest(".masthead, #content") !== null
        : element.matches("[data-scripted]") && element.closest("[data-script=waiting]") !== null;

    // The page as it came and the living one are alike, element by element: one without an id is the so-manieth of those that say the same.
    const words = (element) => [
        ...["type", "name", "value", "aria-label"].map((name) => element.getAttribute(name)),
        element.matches("button, summary") ? element.textContent.trim() : "",
    ].join("|");
    const alike = (tag, said) => [...document.getElementsByTagName(tag)].filter((one) => words(one) === said);
    const placeOf = (element) => element.id ? { id: element.id }
        : { tag: element.localName, said: words(element), nth: alike(element.localName, words(element)).indexOf(element) };
    const at = ({ id, tag, said, nth }) => id ? document.getElementById(id) : alike(tag, said)[nth];

    function note(event) {
        const { type } = event;
        const element = type === "click" ? event.target.closest?.("button, summary") : event.target;
        if (!element?.matches || !isUnheard(element)) return;
        // Pressing it sends its form, which comes next.
        if (type === "click" && element.type === "submit" && element.form) return;
        if (type === "submit") {
            if (element.hasAttribute("action")) return;
            event.preventDefault();
        }
        // Chosen files wait whole: heard by half the listeners they would come in twice.
        if (element.type === "file") event.stopImmediatePropagation();
        const { value, checked, files } = element, { submitter } = event;
        const deed = {
            type, element, place: placeOf(element), value, checked, files, by: submitter ? placeOf(submitter) : null,
            path: location.pathname, part: isAsleep() ? null : element.closest("[data-script=waiting]"),
        };
        // Whoever presses again because nothing moved wants it once; a summary moves by itself, and pressed again it is as it was.
        const isRepeated = (former) => former.element === element && kind(former.type) === kind(type);
        const isUndone = element.localName === "summary" && deeds.some(isRepeated);
        deeds = deeds.filter((former) => !isRepeated(former));
        if (!isUndone) deeds.push(deed);
    }

    const kind = (type) => type === "change" ? "input" : type;

    function again() {
        if (deeds.length === 0 || isAsleep()) return;
        const heard = [], time = performance.now();
        deeds = deeds.filter((deed) => {
            if (deed.path !== location.pathname || deed.part?.isConnected === false) return false;
            const now = at(deed.place);
            if (!now) return time - (deed.missed ??= time) < patience;
            if (!isUnheard(now)) {
                heard.push(deed);
                return false;
            }
            deed.part ??= now.closest("[data-script=waiting]");
            return true;
        });
        for (const deed of heard) {
            const now = at(deed.place);
            if (now) act(now, deed);
        }
    }

    function act(now, { type, element, value, checked, files, by }) {
        if (type === "click") now.click();
        else if (type === "submit") {
            const presser = by && at(by);
            now.requestSubmit(presser?.form === now ? presser : null);
        } else if (files) {
            now.files = files;
            if (files.length > 0) tell(now, "change");
        } else {
            const state = now.type === "checkbox" || now.type === "radio" ? "checked" : "value", is = state === "checked" ? checked : value;
            if (now !== element && now[state] === is) return;
            now[state] = is;
            tell(now, "input");
            if (type === "change") tell(now, "change");
            else settle(now);
        }
    }

    const tell = (element, type) => element.dispatchEvent(new Event(type, { bubbles: true }));

    // A browser tells no change of what a script has written, though a hand wrote it first.
    function settle(element) {
        const ends = new AbortController(), { signal } = ends;
        element.addEventListener("change", () => ends.abort(), { signal });
        element.addEventListener("blur", () => {
            ends.abort();
            tell(element, "change");
        }, { signal });
    }

    function follow() {
        if (!hand || hand.element.isConnected) return;
        const { element, place, heir } = hand;
        hand = null;
        if (document.activeElement && document.activeElement !== document.body) return;
        const now = (place && at(place)) ?? (heir && document.getElementById(heir));
        if (!now) return;
        const was = isFree;
        now.focus({ preventScroll: now.id !== heir });
        // On what has taken the place of its element the hand is where it was: it has not gone on.
        isFree = was && now.id !== heir;
        if (now.setSelectionRange && element.selectionStart != null) now.setSelectionRange(element.selectionStart, element.selectionEnd);
    }

    for (const type of ["input", "change", "click", "submit"]) addEventListener(type, note, true);
    // What is pressed again here was pressed by hand before, and the hand may have gone on since.
    addEventListener("click", ({ isTrusted }) => isFree ||= isTrusted, true);
    addEventListener("focusin", ({ target }) => {
        isFree = false;
        // Beyond its coming to life only what bears a name is known to be the same: the next line's button is not this one's.
        hand = { element: target, place: target.id || isAsleep() ? placeOf(target) : null, heir: target.dataset?.heir };
    }, true);
    // A browser may say so as well when the element is taken away: what follows on that follows before this.
    addEventListener("focusout", ({ target }) => setTimeout(() => {
        if (hand?.element === target && document.activeElement !== target) hand = null;
    }), true);
    new MutationObserver(() => {
        again();
        follow();
    }).observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ["data-awake", "data-script"] });

    window.heaveline = {
        /** A script listens now to this part of the page. */
        heard(element) { element.dataset.script = "there"; },

        /** Puts the focus where a press led, unless the hand has gone on since. */
        onward(element, isStill) {
            if (isFree || document.activeElement === document.body) element?.focus({ preventScroll: isStill });
        },

        /** Another page stands here now: it is read from its heading. */
        arrived() { heaveline.onward(document.querySelector("h1")); },
    };
})();
