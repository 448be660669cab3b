# Sourced by ./test: runs test modules and believes only those that ended and reported.
# Counts of the whole run; what is no test but went wrong (a module that did not end, the formatter) counts as one failed.
passed=0 failed=0 skipped=0

# Every test project of the solution.
modules=$(sed -nE 's|.*Project Path="tests/([^/"]+)/.*|\1|p' Heaveline.slnx)

# run_module NAME PROGRAM REPORT [FILTER …]: leaves REPORT.log, REPORT.xml and REPORT.rc.
run_module() {
    local name=$1 program=$2 report=$3
    shift 3
    "$program" -noColor -noLogo -result-xml "$report.xml" "$@" >"$report.log" 2>&1
    echo $? >"$report.rc"
    echo "test: $name ended."
}

# attribute NAME REPORT: a number from the report's head.
attribute() { grep -o '<assembly [^>]*>' "$2.xml" | sed -nE "s/.* $1=\"([0-9]+)\".*/\1/p"; }

# The tests of a report that ended so ('Pass', 'Fail', 'Skip'), or all: their names, sorted, a line each.
tests_of() { { grep -o '<test [^>]*>' "$2.xml" 2>/dev/null || true; } | { [ -z "$1" ] && cat || grep " result=\"$1\""; } | sed -E 's/.* name="([^"]*)".*/\1/' | sort; }
failures() { tests_of Fail "$1"; }

# ended NAME REPORT: whether the module ran to its end and its three witnesses agree: exit code, closing line, report.
ended() {
    local name=$1 report=$2 rc
    rc=$(cat "$report.rc" 2>/dev/null || echo none)
    if ! grep -qE "^   $name  Total: [0-9]+, " "$report.log" || ! grep -q '</assemblies>' "$report.xml" 2>/dev/null; then
        echo "test: $name did not run to its end (exit code $rc)."
    elif [ "$(attribute total "$report")" != "$(sed -nE "s/^   $name  Total: ([0-9]+), .*/\1/p" "$report.log")" ] ||
        [ "$(attribute total "$report")" -ne "$(tests_of "" "$report" | wc -l)" ]; then
        echo "test: $name reports another number of tests than it says."
    elif [ "$(attribute errors "$report")" -ne 0 ]; then
        echo "test: $name met an error outside its tests (see above)."
    elif [ "$rc" = 0 ] && [ "$(attribute failed "$report")" -ne 0 ] || [ "$rc" != 0 ] && [ "$(attribute failed "$report")" -eq 0 ]; then
        echo "test: $name reports $(attribute failed "$report") failed but ends with exit code $rc."
    else
        return 0
    fi
    return 1
}

# report NAME REPORT: prints what a module said and adds it to the counts.
report() {
    cat "$2.log"
    if ! ended "$1" "$2"; then
        failed=$((failed + 1))
    elif [ "$(attribute total "$2")" -eq 0 ]; then
        echo "test: $1 ran no test."
        failed=$((failed + 1))
    else
        passed=$((passed + $(attribute passed "$2")))
        failed=$((failed + $(attribute failed "$2")))
        skipped=$((skipped + $(attribute skipped "$2")))
    fi
}

# try_again NAME PROGRAM FIRST SECOND: runs the failed tests of the first report once more; only if every one of them passes is it forgiven.
try_again() {
    local name=$1 program=$2 first=$3 second=$4 only=() method count
    count=$(failures "$first" | wc -l)
    while read -r method; do only+=(-method "$method"); done < <(
        grep -o '<test [^>]*>' "$first.xml" | grep ' result="Fail"' | sed -E 's/.* type="([^"]*)" method="([^"]*)".*/\1.\2/' | sort -u)
    echo "test: $count failed in the browser, tried once more alone."
    run_module "$name" "$program" "$second" "${only[@]}"
    cat "$second.log"
    if ended "$name" "$second" && [ -z "$(failures "$second")" ] && [ -z "$(comm -23 <(failures "$first") <(tests_of Pass "$second"))" ]; then
        failures "$first"
        echo "test: $count passed at the second try."
        passed=$((passed + count))
        failed=$((failed - count))
    else
        echo "test: not all of them passed at the second try."
    fi
}

# closing: the line that is read, and the exit code.
closing() {
    printf '%d passed, %d failed, %d skipped\n' "$passed" "$failed" "$skipped"
    [ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
}
