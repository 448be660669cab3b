namespace Heaveline.Web.Serving;

/// <summary>Addresses of pages and of what can be taken away from them.</summary>
internal static class PageAddress
{
    /// <summary>The car page.</summary>
    public static string Car(string name) => "car" + Query([("car", name)]);

    /// <summary>The pass page.</summary>
    public static string Pass(string name) => "pass" + Query([("car", name)]);

    /// <summary>The drive page.</summary>
    /// <param name="folder">The drive, by its folder.</param>
    public static string Drive(string folder) => "drive" + Query([("log", folder)]);

    /// <summary>A download of the car page.</summary>
    public static string Download(string what, string name) => $"download/{what}" + Query([("car", name)]);

    /// <summary>An address that says one thing more.</summary>
    /// <param name="address">The address.</param>
    /// <param name="key">The key.</param>
    /// <param name="word">The word.</param>
    public static string With(string address, string key, string word) =>
        $"{address}{(address.Contains('?', StringComparison.Ordinal) ? '&' : '?')}{key}={Uri.EscapeDataString(word)}";

    /// <summary>The query of an address, with its question mark [RFC 3986 §3.4]; empty when it says nothing.</summary>
    /// <param name="words">Keys and words in their order; null for what is left out.</param>
    public static string Query(IEnumerable<(string Key, string? Word)> words)
    {
        var query = string.Join('&', words.Where(w => w.Word is not null).Select(w => $"{w.Key}={Uri.EscapeDataString(w.Word!)}"));
        return query.Length > 0 ? "?" + query : "";
    }
}
