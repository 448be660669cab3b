@echo off
rem Builds Heaveline and runs it: run COMMAND ... ; without a command it shows the pages in a browser (run serve).
setlocal
set DOTNET_CLI_TELEMETRY_OPTOUT=1
where dotnet >nul 2>nul || (echo Heaveline needs the .NET SDK 10: https://dotnet.microsoft.com/download & exit /b 3)
dotnet build "%~dp0src\Heaveline.Cli" -c Release -v q -nologo >nul || (echo run: the build failed; see: dotnet build src\Heaveline.Cli & exit /b 3)
if "%~1"=="" ("%~dp0src\Heaveline.Cli\bin\Release\net10.0\Heaveline.Cli.exe" serve) else ("%~dp0src\Heaveline.Cli\bin\Release\net10.0\Heaveline.Cli.exe" %*)
