using Heaveline.Files.Yaml;

namespace Heaveline.Files.Garages;

/// <summary>A file that is no longer in the garage and can be put back.</summary>
/// <param name="Version">The file as it is kept.</param>
/// <param name="Kind">What it describes.</param>
/// <param name="Title">What it is called; the file's name when its text does not say.</param>
public sealed record TakenOutFile(EarlierVersion Version, GarageKind Kind, string Title)
{
    /// <summary>How many of the newest are listed.</summary>
    public const int Most = 50;

    internal static TakenOutFile Of(Garage garage, EarlierVersion version)
    {
        var (kind, title) = Called(version.Name, garage.ReadEarlier(version.Name, version.Until).Text);
        return new TakenOutFile(version, kind, title);
    }

    /// <summary>What a text describes, and what it is called; the file's name when it does not say.</summary>
    internal static (GarageKind Kind, string Title) Called(string name, string? text)
    {
        var root = text is null ? null : YamlReading.Value(new SourceText(name, text)).Root;
        var format = GarageFormat.Of(root);
        var title = format is { TitleKey: { Length: > 0 } key } && root!.At(key) is { Kind: NodeKind.Scalar, IsEmpty: false } words
            ? words.Text.Trim()
            : name;
        return (format?.Kind ?? GarageKind.Unknown, title);
    }
}
