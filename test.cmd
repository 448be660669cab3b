@echo off
rem Builds everything and runs every test; test WORD runs the tests of the rooms, classes or methods so called.
setlocal
set DOTNET_CLI_TELEMETRY_OPTOUT=1
set TESTINGPLATFORM_TELEMETRY_OPTOUT=1
cd /d "%~dp0"
if not "%~1"=="" goto some
dotnet format whitespace . --folder --verify-no-changes --include src/ tests/ bench/ || exit /b 1
dotnet build Heaveline.slnx -c Release -v q -nologo || exit /b 1
dotnet test --solution Heaveline.slnx -c Release --no-build --no-ansi --progress off --max-parallel-test-modules 1
exit /b %ERRORLEVEL%
:some
dotnet build Heaveline.slnx -c Release -v q -nologo || exit /b 1
dotnet test --solution Heaveline.slnx -c Release --no-build --no-ansi --progress off --ignore-exit-code 8 --minimum-expected-tests 1 -- --filter-query "/*/(%~1)|(*.%~1)|(*.%~1.*)/*/*" --filter-query "/*/*/(%~1)|(%~1Tests)/*" --filter-query "/*/*/*/%~1"
