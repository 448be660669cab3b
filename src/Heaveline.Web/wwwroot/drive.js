// Brings the files of a log into the garage: each is posted whole to the door of the logs, the first begins the drive, the others join it.

/** Listens to the field of an upload section; tells the page's object the drive's folder once all files have come in. */
export function attach(section, page) {
    // Another page is shown by now.
    if (!section) {
        return;
    }
    const field = section.querySelector("input[type=file]");
    const remark = section.querySelector("[role=status]");
    field.addEventListener("change", async () => {
        const files = [...field.files].sort((a, b) => a.name < b.name ? -1 : 1);
        if (files.length === 0) {
            return;
        }
        field.disabled = true;
        const wanted = section.querySelector("input[type=text]").value.trim();
        const { drive, refusal } = await bring(files, section.dataset, wanted, (words) => say(remark, words, false));
        field.disabled = false;
        field.value = "";
        if (refusal) {
            say(remark, refusal, true);
        }
        if (drive && !refusal) {
            say(remark, "It stands in the garage now.", false);
            await page.invokeMethodAsync("Done", drive);
        }
    });
    heaveline.heard(section);
}

async function bring(files, { door, most, endings }, wanted, told) {
    const wrong = files.find((file) => !endings.split(",").some((ending) => file.name.toLowerCase().endsWith(ending)));
    const large = files.find((file) => file.size > Number(most));
    if (wrong || large) {
        return {
            drive: null,
            refusal: wrong ? `${wrong.name}: the name must end in ${endings.split(",").join(" or ")}.`
                : `${large.name} has ${large.size} bytes; it must have ${most} or fewer. Pack it as a .zip.`,
        };
    }
    let drive = null;
    for (const [k, file] of files.entries()) {
        told(files.length > 1 ? `${file.name}, ${k + 1} of ${files.length} …` : `${file.name} …`);
        const query = new URLSearchParams(drive ? { drive, file: file.name } : { name: wanted || stem(file.name), file: file.name });
        let answer;
        try {
            answer = await fetch(`${door}?${query}`, { method: "POST", headers: { "Content-Type": "application/octet-stream" }, body: file });
        } catch {
            return { drive, refusal: `${file.name} did not arrive: the program cannot be reached, or the file changed meanwhile. Choose it again.` };
        }
        if (!answer.ok) {
            return { drive, refusal: `${file.name}: ${answer.status === 401 ? "the program asks for its code again; load this page anew." : await answer.text()}` };
        }
        ({ drive } = await answer.json());
    }
    return { drive, refusal: null };
}

const stem = (name) => name.replace(/\.[^.]*$/, "");

function say(place, words, isRefused) {
    const line = document.createElement("p");
    line.textContent = words;
    line.className = isRefused ? "refused" : "quiet";
    place.replaceChildren(line);
}
