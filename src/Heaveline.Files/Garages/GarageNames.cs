namespace Heaveline.Files.Garages;

/// <summary>Which names a file of a garage may have. The same on every system, so that a garage can be carried from one to another.</summary>
internal static class GarageNames
{
    /// <summary>Folder of the earlier versions.</summary>
    public const string Earlier = "earlier";

    private const int Longest = 200;
    private const string Forbidden = "<>:\"|?*\\";
    private static readonly string[] Devices = ["CON", "PRN", "AUX", "NUL", "CONIN$", "CONOUT$"];

    /// <summary>Why a name is not taken, in words that follow the name; null when it is.</summary>
    public static string? Problem(string name) => Problem(name, FileFormat.Described);

    /// <summary>The same for a file of another format.</summary>
    public static string? Problem(string name, FileFormat format)
    {
        if (string.IsNullOrWhiteSpace(name) || name.Length > Longest)
        {
            return $"must have 1 to {Longest} characters";
        }

        if (name.Any(c => ControlCharacter.Is(c) || char.IsSurrogate(c) || Forbidden.Contains(c, StringComparison.Ordinal)))
        {
            return $"must not hold control characters or any of {Forbidden}";
        }

        if (!format.Has(name))
        {
            return $"must end in {format.EndingWords}";
        }

        var parts = name.Split('/');
        if (parts.Any(part => part.Length == 0 || part[0] == '.' || part[^1] is '.' or ' ' || part[0] == ' '))
        {
            return "must be a name inside the garage: no folder above it, no empty or hidden part, no point or blank at a part's end";
        }

        if (parts.Any(IsDevice))
        {
            return "is the name of a device on some systems";
        }

        return parts[0].Equals(Earlier, StringComparison.OrdinalIgnoreCase) ? $"lies among the earlier versions, in {Earlier}" : null;
    }

    // COM1 and LPT² too, with any extension (learn.microsoft.com, "Naming Files, Paths, and Namespaces").
    private static bool IsDevice(string part)
    {
        var bare = part.Split('.')[0].TrimEnd().ToUpperInvariant();
        return Devices.Contains(bare)
            || (bare.Length == 4 && (bare.StartsWith("COM", StringComparison.Ordinal) || bare.StartsWith("LPT", StringComparison.Ordinal))
                && (char.IsAsciiDigit(bare[3]) || bare[3] is '¹' or '²' or '³'));
    }
}
