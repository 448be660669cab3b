#!/usr/bin/env bash
# Packs library and program into artifacts/package, one package of the program for each system beside the small one that names them, and tries the library as a
# user would: the samples of docs/library.md, compiled and run against the packages. The program's own folders and archives: eng/publish.sh.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
. eng/setup.sh
. eng/systems.sh
packages=$PWD/artifacts/package
trial=$PWD/artifacts/package-trial
rm -rf "$packages" "$trial"
for project in Heaveline Heaveline.Files; do
    dotnet pack "src/$project" -c Release -v q -nologo -p:RunAnalyzers=false -o "$packages"
done
# By 'dotnet tool install' a machine gets the small one, and by it the one for its system. One call makes them all.
native=()
[[ " $systems " != *" $here "* ]] || with_native
dotnet pack src/Heaveline.Cli "${options[@]}" -p:ToolPackageRuntimeIdentifiers=\"${systems// /;}\" -p:RuntimeIdentifiers=\"${systems// /;}\" \
    "${native[@]}" -o "$packages"
same_packages

# Licences, notices and the bill of materials go out with every one.
for package in "$packages"/*.nupkg; do
    for file in LICENSE THIRD-PARTY-NOTICES.txt FONT-LICENSE.txt bill-of-materials.json; do
        unzip -p "$package" $file | cmp - "$(source_of $file)"
    done
    weigh "$package"
done

# A program that takes the runtime along takes along what the packs of the runtime and of the web framework say of licences. Its lock is its own: the runtime adds packages.
runtime=$(dotnet --info | sed -n 's/^ *RID: *//p')
alone=$PWD/artifacts/published-alone
rm -rf "$alone"
dotnet publish src/Heaveline.Cli -c Release -v q -nologo -p:RunAnalyzers=false -o "$alone" -r "$runtime" --self-contained true \
    -p:RestoreLockedMode=false -p:NuGetLockFilePath=obj/publish.lock.json
for framework in Microsoft.NETCore.App Microsoft.AspNetCore.App; do
    version=$(tr -d ' \r\n' <"$alone/Heaveline.Cli.runtimeconfig.json" | sed -E "s/.*\"name\":\"$framework\",\"version\":\"([^\"]*)\".*/\1/")
    pack=${NUGET_PACKAGES:-$HOME/.nuget/packages}/$(tr '[:upper:]' '[:lower:]' <<<"$framework.Runtime.$runtime")/$version
    for file in LICENSE THIRD-PARTY-NOTICES; do
        cmp "$pack"/$file.* "$alone/runtime-notices/$framework"/$file.*
    done
done

# Neither the settings nor the package versions of this checkout reach the trial, and its packages are kept apart from the machine's own.
mkdir -p "$trial"
cp tests/Heaveline.Tests/Library/Samples/*.cs "$trial"
printf '<Project />\n' | tee "$trial/Directory.Build.props" "$trial/Directory.Build.targets" "$trial/Directory.Packages.props" >/dev/null
cat >"$trial/Trial.csproj" <<END
<Project Sdk="Microsoft.NET.Sdk">
  <PropertyGroup>
    <TargetFramework>net10.0</TargetFramework>
    <OutputType>Exe</OutputType>
    <Nullable>enable</Nullable>
    <ImplicitUsings>enable</ImplicitUsings>
    <InvariantGlobalization>true</InvariantGlobalization>
    <RestoreAdditionalProjectSources>$packages</RestoreAdditionalProjectSources>
    <RestorePackagesPath>$trial/packages</RestorePackagesPath>
  </PropertyGroup>
  <ItemGroup>
    <PackageReference Include="Heaveline.Files" Version="*-*" />
  </ItemGroup>
</Project>
END
printf 'Samples.CarInCode.Run(Console.Out);\nSamples.CarFromText.Run(Console.Out);\n' >"$trial/Program.cs"
dotnet build "$trial" -c Release -v q -nologo -o "$trial/program"
"$trial/program/Trial" >"$trial/printed"
sed -n '/^```text$/,/^```$/{/^```/d;p}' docs/library.md | diff - "$trial/printed"
ls "$packages"
echo "pack: the samples of docs/library.md print what it quotes."
