# Sourced by ./test: the browser tests drive a real Chromium, from the system's packages.
if [ -z "${HEAVELINE_CHROMIUM:-}" ]; then
    HEAVELINE_CHROMIUM=$(command -v chromium || command -v chromium-browser || true)
    if [ -z "$HEAVELINE_CHROMIUM" ] && command -v apt-get >/dev/null 2>&1; then
        as_root=
        [ "$(id -u)" = 0 ] || as_root="sudo -n"
        echo "test: installing Chromium for the browser tests (apt-get install chromium) …" >&2
        { $as_root apt-get update -q && DEBIAN_FRONTEND=noninteractive $as_root apt-get install -y -q --no-install-recommends chromium; } >&2
        HEAVELINE_CHROMIUM=$(command -v chromium || true)
    fi
    if [ -z "$HEAVELINE_CHROMIUM" ]; then
        echo "test: no Chromium was found and none could be installed. Install it, or name it in HEAVELINE_CHROMIUM; the browser tests will fail without it." >&2
    fi
fi
export HEAVELINE_CHROMIUM
