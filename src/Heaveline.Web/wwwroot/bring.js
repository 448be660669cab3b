// Brings a film into the garage: the door is asked first whether it may come, then it is sent as it is, with how far it is and a way to stop it.

/**
 * Listens to the field of a section; tells the page's object the film's name in the garage once it is there. What it gives back stops a film that is
 * on its way: the page has gone.
 */
export function attach(section, page) {
    if (!section) {
        return { stop() {} };
    }
    const field = section.querySelector("input[type=file]");
    const [remark, underway] = ["[role=status]", ".underway"].map((one) => section.querySelector(one));
    let sending = null, isGone = false;
    section.querySelector("#film-file-cancel").addEventListener("click", () => sending?.abort());
    field.addEventListener("change", async () => {
        const [film] = field.files;
        if (!film) {
            return;
        }
        field.disabled = true;
        remark.replaceChildren();
        let answer = await refusal(film, section.dataset);
        if (!answer && !isGone) {
            sending = new XMLHttpRequest();
            underway.hidden = false;
            answer = await send(sending, film, section.dataset.door, (share) => shown(underway, share, film.size));
            underway.hidden = true;
            sending = null;
        }
        if (isGone) {
            return;
        }
        field.disabled = false;
        field.value = "";
        say(remark, answer.words, !answer.film);
        if (answer.film) {
            await page.invokeMethodAsync("Done", answer.film);
        }
    });
    heaveline.heard(section);
    return {
        stop() {
            isGone = true;
            sending?.abort();
        },
    };
}

async function refusal(film, { door, first, most, endings }) {
    if (!endings.split(",").some((ending) => film.name.toLowerCase().endsWith(ending))) {
        return { words: `${film.name}: the name must end in ${endings.split(",").join(" or ")}.` };
    }
    if (film.size > Number(most)) {
        return { words: `${film.name} has ${(film.size / 1e9).toFixed(2)} GB; a film has at most ${Number(most) / 1e9} GB. Cut it to the seconds around the bump.` };
    }
    try {
        const begins = [...new Uint8Array(await film.slice(0, Number(first)).arrayBuffer())].map((one) => one.toString(16).padStart(2, "0")).join("");
        const answer = await fetch(`${door}?${new URLSearchParams({ file: film.name, bytes: film.size, begins })}`);
        return answer.ok ? null : { words: told(answer.status, await answer.text()) };
    } catch {
        return { words: `${film.name} did not arrive: the program cannot be reached, or the film cannot be read. Choose it again.` };
    }
}

const told = (status, words) => status === 401 ? "The program asks for its code again; load this page anew." : words;

// How far a body has got is told of this kind of request alone.
function send(request, film, door, moved) {
    return new Promise((done) => {
        request.upload.addEventListener("progress", (event) => moved(event.loaded / Math.max(1, film.size)));
        request.addEventListener("load", () => {
            if (request.status !== 201) {
                done({ words: told(request.status, request.responseText) });
                return;
            }
            try {
                done({ film: JSON.parse(request.responseText).film, words: `${film.name} stands in the garage now.` });
            } catch {
                done({ words: `Whether ${film.name} came in is not known: what answered is not this program. Load this page anew and look.` });
            }
        });
        request.addEventListener("abort", () => done({ words: "Stopped: nothing of the film is kept." }));
        request.addEventListener("error", () =>
            done({ words: `${film.name} did not arrive: the program cannot be reached, or the film changed meanwhile. Choose it again.` }));
        request.open("POST", `${door}?${new URLSearchParams({ file: film.name })}`);
        request.setRequestHeader("Content-Type", "application/octet-stream");
        request.send(film);
    });
}

function shown(underway, share, size) {
    underway.querySelector("progress").value = share;
    underway.querySelector("[data-share]").textContent = `${Math.floor(100 * share)} % of ${(size / 1e6).toFixed(0)} MB`;
}

function say(place, words, isRefused) {
    const line = document.createElement("p");
    line.textContent = words;
    line.className = isRefused ? "refused" : "quiet";
    place.replaceChildren(line);
}
