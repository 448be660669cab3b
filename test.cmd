@echo off
rem Builds everything and runs every test.
setlocal
set DOTNET_CLI_TELEMETRY_OPTOUT=1
set TESTINGPLATFORM_TELEMETRY_OPTOUT=1
cd /d "%~dp0"
dotnet build Heaveline.slnx -c Release -v q -nologo || exit /b 1
dotnet test --solution Heaveline.slnx -c Release --no-build --no-ansi --progress off --max-parallel-test-modules 1
