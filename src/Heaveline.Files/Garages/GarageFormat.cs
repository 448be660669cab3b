using Heaveline.Files.Cars;
using Heaveline.Files.Drives;
using Heaveline.Files.Ties;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Garages;

/// <summary>What a garage does with one kind of file: how it is known, and what its line in the list says.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="File">Endings and greatest length.</param>
/// <param name="Fits">Whether a document is of this kind, by its keys.</param>
/// <param name="Line">The line of a file, given the garage, the file's name, its document and its text.</param>
internal sealed record GarageFormat(GarageKind Kind, FileFormat File, Func<Node, bool> Fits, Func<Garage, string, Node, string, GarageEntry> Line)
{
    /// <summary>All of them; the first that fits is taken.</summary>
    public static IReadOnlyList<GarageFormat> All { get; } =
    [
        // First: a drive names its car, and what was changed, by the words of other files.
        new(GarageKind.Drive, FileFormat.Described, DriveWords.IsDrive, GarageLines.Drive),
        new(GarageKind.Ties, FileFormat.Described, TieWords.IsSheet, GarageLines.Ties),
        new(GarageKind.Road, FileFormat.Described, root => root.At("road") is not null, GarageLines.Road),
        new(GarageKind.Variant, FileFormat.Described, VariantWords.IsVariant, GarageLines.Variant),
        new(GarageKind.Car, FileFormat.Described, root => root.At("car") is not null, GarageLines.Car),
        new(GarageKind.Choices, FileFormat.Described, GarageChoices.IsOf, GarageLines.Choices),
    ];

    /// <summary>The format of a document; null for none of them.</summary>
    public static GarageFormat? Of(Node? root) => root is null ? null : All.FirstOrDefault(format => format.Fits(root));

    /// <summary>Whether a file's name ends as one that is listed.</summary>
    public static bool Has(string name) => All.Any(format => format.File.Has(name));
}
