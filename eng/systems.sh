# Sourced by what makes something to go out: for which systems, how, and how heavy it may be.
systems="linux-x64 win-x64 osx-arm64"
version=$(sed -nE 's|.*<Version>(.*)</Version>.*|\1|p' Directory.Build.props)
# The system of this machine where the native program can be made on it, else nothing.
here=$(case "$(uname -s)-$(uname -m)" in
    Linux-x86_64) echo linux-x64 ;;
    Linux-aarch64) echo linux-arm64 ;;
    Darwin-arm64) echo osx-arm64 ;;
    Darwin-x86_64) echo osx-x64 ;;
esac)

# A lock names the systems that it was made for, and the committed one none. So each has its own, away from the build of ./test; it is made from packages of
# the same versions, which same_packages compares by their content.
options=(-c Release -v q -nologo -p:RunAnalyzers=false --artifacts-path "$PWD/artifacts/for-systems"
    -p:RestoreLockedMode=false "-p:NuGetLockFilePath=obj/systems.lock.json")

# with_native: makes the native program, and leaves in 'native' what lets it go out in front, with the notices of the runtime inside it.
with_native() {
    dotnet publish src/Heaveline.Native -c Release -v q -nologo -p:RunAnalyzers=false -o "$PWD/artifacts/native"
    native=(-p:NativeSystem="$here" -p:NativeProgram="$PWD/artifacts/native/Heaveline.Native" -p:NativeNotices="$(
        ls -t "${NUGET_PACKAGES:-$HOME/.nuget/packages}/runtime.$here.microsoft.dotnet.ilcompiler"/*/THIRD-PARTY-NOTICES.TXT | head -1)")
}

# same_packages: whether what was last restored for a system is, content by content, what the committed lock of the program names.
same_packages() {
    local hash='"contentHash": "[^"]*"' lost
    lost=$(comm -23 <(grep -o "$hash" src/Heaveline.Cli/packages.lock.json | sort -u) <(grep -o "$hash" src/Heaveline.Cli/obj/systems.lock.json | sort -u))
    [ -z "$lost" ] || { echo "$0: packages other than the locked ones were taken: $lost" >&2; return 1; }
}

# source_of FILE: where one of the files that go out with everything comes from.
source_of() { if [ "$1" = FONT-LICENSE.txt ]; then echo src/Heaveline.Press/Fonts/OFL.txt; else echo "$1"; fi; }

# weigh FILE: says how heavy it is; above 40 MB is an error.
weigh() {
    local bytes
    bytes=$(wc -c <"$1")
    printf '%s: %d.%d MB\n' "${1#"$PWD/"}" $((bytes / 1000000)) $((bytes / 100000 % 10))
    if [ "$bytes" -gt 40000000 ]; then
        echo "$0: $1 is heavier than 40 MB." >&2
        return 1
    fi
}
