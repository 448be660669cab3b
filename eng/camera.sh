# Sourced by ./test: the tests of films write and read them with FFmpeg, and follow cars by OpenCV, whose library wants GTK's though it opens no window.
if ! command -v ffmpeg >/dev/null 2>&1 || ! command -v ffprobe >/dev/null 2>&1 || ! ldconfig -p 2>/dev/null | grep -q 'libgtk-3\.so\.0'; then
    if command -v apt-get >/dev/null 2>&1; then
        echo "test: installing FFmpeg and GTK for the tests of films (apt-get install ffmpeg libgtk-3-0) …" >&2
        as_root=()
        [ "$(id -u)" = 0 ] || as_root=(sudo -n)
        { "${as_root[@]}" apt-get update -q && { DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get install -y -q --no-install-recommends ffmpeg libgtk-3-0 ||
            DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get install -y -q --no-install-recommends ffmpeg libgtk-3-0t64; }; } >&2
    fi
    if ! command -v ffmpeg >/dev/null 2>&1 || ! ldconfig -p 2>/dev/null | grep -q 'libgtk-3\.so\.0'; then
        echo "test: FFmpeg or GTK is missing and could not be installed. Install both (ffmpeg, libgtk-3-0); the tests of films will fail without them." >&2
    fi
fi
