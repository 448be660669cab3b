using System.Text;
using Heaveline.Files.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Garages;
using Heaveline.Quantities;

namespace Heaveline.Web.Pages.Passes;

/// <summary>What is set on the page, as a variant file of the garage: read back before it is written, whole or not at all.</summary>
internal static class PassVariant
{
    private const int LongestName = 60;

    /// <summary>Name of the variant as a car of the garage: the base's, then the variant's letters and digits.</summary>
    /// <exception cref="RefusedValueException">Nothing of the name can stand in a file's name.</exception>
    public static string FileName(string car, string name)
    {
        var words = new StringBuilder();
        foreach (var c in name)
        {
            words.Append(char.IsLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-');
        }

        var slug = string.Join('-', words.ToString().Split('-', StringSplitOptions.RemoveEmptyEntries));
        if (slug.Length is 0 or > LongestName)
        {
            throw new RefusedValueException(
                "The variant’s name",
                name.Length == 0 ? "blank" : $"“{name}”",
                $"a few words with letters or digits, at most {LongestName} signs",
                "Call it after what it changes: “softer front”.");
        }

        return $"{car}-{slug}";
    }

    /// <summary>The file's text, or why there is none.</summary>
    public static EditOutcome Write(PassView view, string name) =>
        VariantFile.Write(name.Trim(), view.State.Car + ".yaml", view.Reading.Root!, view.Words);

    /// <summary>Saves it in the garage.</summary>
    /// <param name="view">What is on the page.</param>
    /// <param name="name">The variant's name.</param>
    /// <param name="garage">The garage.</param>
    /// <param name="replaces">Whether it may take the place of a file of that name.</param>
    /// <returns>What came of it.</returns>
    /// <exception cref="RefusedValueException">The name cannot be used, or no file can say what is set: nothing is written.</exception>
    public static SaveOutcome Save(PassView view, string name, Garage garage, bool replaces)
    {
        var file = FileName(view.State.Car, name) + ".yaml";
        var written = Write(view, name);
        var text = written.Text ?? throw new RefusedValueException(
            "This car", "not kept", "a car that a file can describe", $"{written.Refusal!.Message} {written.Refusal.Advice}");
        if (garage.Car(file, text) is { Value: null, Refusals: [var first, ..] })
        {
            throw new RefusedValueException("This car", "not kept", "a car that a file may describe", $"{first.Message} {first.Advice}");
        }

        return garage.Save(file, text, replaces ? garage.Read(file).Stamp : null);
    }
}
