using Heaveline.Files.Choosing;
using Heaveline.Files.Roads;
using Heaveline.Files.Yaml;
using Heaveline.Studies;

namespace Heaveline.Files.Garages;

/// <summary>A study of a garage: what it names must lie there, and is called by its name inside.</summary>
internal static class GarageStudy
{
    /// <summary>Reads the text of a study.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="name">The study's name inside it.</param>
    /// <param name="path">Its full path.</param>
    /// <param name="text">The text.</param>
    public static Reading<ChooseSheet> Read(Garage garage, string name, string path, string text)
    {
        var reading = StudyFile.Read(new SourceText(name, text));
        if (reading.Value is not { } sheet)
        {
            return reading;
        }

        var refusals = new List<Refusal>();
        var inside = sheet.Named((file, choice) =>
        {
            if (choice == ChooseSheet.Road && NamedRoads.All.ContainsKey(file))
            {
                return file;
            }

            var (full, problem) = Confined.Resolve(garage.Folder, path, file);
            if (problem is null && File.Exists(full))
            {
                return garage.NameOf(full);
            }

            var line = sheet.Lines.First(line => line.Choice == choice && line.Words.Contains(file, StringComparison.Ordinal));
            refusals.Add(new Refusal(
                name, line.Line, line.Column, line.Length, $"\"{file}\" {problem ?? "is not there"}.",
                "Name a file of the garage, relative to this file."));
            return file;
        });
        return refusals.Count == 0
            ? reading with { Value = inside }
            : reading with { Value = null, Refusals = [.. refusals.OrderBy(r => r.Line).ThenBy(r => r.Column)] };
    }
}
