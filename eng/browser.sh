# Sourced by ./test: the browser tests drive a real Chromium, from the system's packages.
# The one without windows does the same with half the processor time; the whole one serves where that cannot be had.
if [ -z "${HEAVELINE_CHROMIUM:-}" ]; then
    first_of() { local name; for name in "$@"; do command -v "$name" && return; done; true; }
    install_chromium() {
        echo "test: installing Chromium for the browser tests (apt-get install chromium-headless-shell) …" >&2
        { "$@" apt-get update -q && { DEBIAN_FRONTEND=noninteractive "$@" apt-get install -y -q --no-install-recommends chromium-headless-shell ||
            DEBIAN_FRONTEND=noninteractive "$@" apt-get install -y -q --no-install-recommends chromium; }; } >&2
    }
    HEAVELINE_CHROMIUM=$(first_of chromium-headless-shell)
    if [ -z "$HEAVELINE_CHROMIUM" ] && command -v apt-get >/dev/null 2>&1; then
        if [ "$(id -u)" = 0 ]; then
            install_chromium env
        elif [ -z "$(first_of chromium chromium-browser)" ]; then
            install_chromium sudo -n
        fi
    fi
    HEAVELINE_CHROMIUM=$(first_of chromium-headless-shell chromium chromium-browser)
    if [ -z "$HEAVELINE_CHROMIUM" ]; then
        echo "test: no Chromium was found and none could be installed. Install it, or name it in HEAVELINE_CHROMIUM; the browser tests will fail without it." >&2
    fi
fi
export HEAVELINE_CHROMIUM
