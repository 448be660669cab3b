namespace Heaveline.Files.Garages;

/// <summary>What kinds of files of a garage are called.</summary>
public static class GarageKindWords
{
    /// <summary>The kind in a word or two: "car", "cable ties".</summary>
    public static string Of(GarageKind kind) => kind switch
    {
        GarageKind.Car => "car",
        GarageKind.Variant => "variant",
        GarageKind.Road => "road",
        GarageKind.Drive => "drive",
        GarageKind.Ties => "cable ties",
        GarageKind.Parts => "list of parts",
        GarageKind.Choices => "choices of the garage",
        _ => "unknown file",
    };
}
