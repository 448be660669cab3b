@echo off
rem Builds Heaveline and runs it: run COMMAND ... ; without a command it shows the pages in a browser (run serve).
rem The build has a folder of its own (artifacts\quick) and leaves the analyzers out: they belong to test, whose own build stays untouched.
setlocal
set DOTNET_CLI_TELEMETRY_OPTOUT=1
set OUT=%~dp0artifacts\quick
set PROGRAM=%OUT%\bin\Heaveline.Cli\release\Heaveline.Cli.exe
where dotnet >nul 2>nul || (echo Heaveline needs the .NET SDK 10: https://dotnet.microsoft.com/download & exit /b 3)
dotnet build "%~dp0src\Heaveline.Cli" -c Release -v q -nologo -p:RunAnalyzers=false --artifacts-path "%OUT%" >nul || (echo run: the build failed; see: dotnet build src\Heaveline.Cli & exit /b 3)
if "%~1"=="" ("%PROGRAM%" serve) else ("%PROGRAM%" %*)
