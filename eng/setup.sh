# Sourced by ./run and ./test: what both need on a fresh machine.
export DOTNET_CLI_TELEMETRY_OPTOUT=1 TESTINGPLATFORM_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
if ! command -v dotnet >/dev/null 2>&1; then
    echo "Heaveline needs the .NET SDK 10 (https://dotnet.microsoft.com/download). Install it, then run this again." >&2
    exit 3
fi
