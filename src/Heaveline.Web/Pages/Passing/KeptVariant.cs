using System.Text;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Quantities;
using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Passing;

/// <summary>What is set on the page, as a variant file of the garage: read back before it is written, whole or not at all.</summary>
internal static class KeptVariant
{
    private const int LongestName = 60;

    /// <summary>Name of the file without its ending: the base's, then the variant's letters and digits.</summary>
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
            throw new RefusedValueException("The variant’s name", name.Length == 0 ? "blank" : $"“{name}”", $"a few words with letters or digits, at most {LongestName} signs", "Call it after what it changes: “softer front”.");
        }

        return $"{car}-{slug}";
    }

    /// <summary>The file's text.</summary>
    public static string Text(PassView view, string name) => VariantText.Of(name.Trim(), view.State.Car + ".yaml", null, view.Words);

    /// <summary>Writes it into the garage.</summary>
    /// <param name="view">What is on the page.</param>
    /// <param name="name">The variant's name.</param>
    /// <param name="shelf">The garage.</param>
    /// <returns>Name of the new car file.</returns>
    /// <exception cref="RefusedValueException">The name cannot be used, or the file read back would be refused: nothing is written.</exception>
    /// <exception cref="IOException">The disk refuses it: nothing is written.</exception>
    public static string Write(PassView view, string name, Shelf shelf)
    {
        var car = FileName(view.State.Car, name);
        var path = shelf.PathOf(car);
        var text = Text(view, name);
        var reading = CarFile.Read(new SourceText(path, text), shelf.Folder);
        if (reading.Car is null)
        {
            var first = reading.Refusals[0];
            throw new RefusedValueException("This car", "not kept", "a car that a file may describe", $"{first.Message} {first.Advice}");
        }

        WholeFile.Write(path, Encoding.UTF8.GetBytes(text));
        return car;
    }
}
