# Sourced by ./test WORD …: the tests of the rooms (parts of a namespace), classes or methods of these names.
# A * at either end of a class or method stands for any letters.
# The build shares its folder with ./run and leaves the analyzers out; the full ./test has them.
quick=artifacts/quick
filters=() pattern=
for word in "$@"; do
    if ! [[ $word =~ ^\*?[A-Za-z0-9_.]+\*?$ ]]; then
        echo "test: '$word' is no name of a room, a class or a test. Usage: ./test, or ./test WORD …, as in ./test Measures" >&2
        exit 2
    fi
    places=("*/$word/*" "*/*/$word")
    [[ $word == *\** ]] || places+=("$word/*/*" "*.$word/*/*" "*.$word.*/*/*" "*/${word}Tests/*")
    for place in "${places[@]}"; do filters+=(-filter "/*/$place"); done
    letters=${word//./\\.}
    letters=${letters//\*/[A-Za-z0-9_]*}
    pattern+="${pattern:+|}^namespace ([A-Za-z0-9_.]+\.)?$letters[.;]|class $letters(Tests)?([^A-Za-z0-9_]|\$)|(void|Task) $letters\("
done
found=
for module in $modules; do
    if find "tests/$module" -name obj -prune -o -name '*.cs' -exec grep -qiE "$pattern" {} +; then found+=" $module"; fi
done
case "$*" in *Cluster* | *Membership*) . eng/servers.sh ;; esac
for module in $found; do
    [ "$module" != Heaveline.BrowserTests ] || . eng/browser.sh
    [ "$module" != Heaveline.CameraTests ] || . eng/camera.sh
    if ! dotnet build "tests/$module" -c Release -v q -nologo -p:RunAnalyzers=false --artifacts-path "$quick" >"$out/build.log" 2>&1; then
        cat "$out/build.log"
        echo "test: the build failed (see above)."
        exit 1
    fi
    run_module "$module" "$quick/bin/$module/release/$module" "$out/$module" "${filters[@]}" >/dev/null
    # The words may have met a class without tests there.
    if ! ended "$module" "$out/$module" >/dev/null || [ "$(attribute total "$out/$module")" -gt 0 ]; then report "$module" "$out/$module"; fi
done
if [ $((passed + failed + skipped)) -eq 0 ]; then
    echo "test: no room, class or test is called $*. The rooms are:" \
        $(find tests -name obj -prune -o -name '*.cs' -exec grep -hoE '^namespace [A-Za-z0-9_.]+' {} + | sed -E 's/^namespace Heaveline\.//' | sort -u) >&2
    exit 1
fi
closing
