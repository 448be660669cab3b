namespace Heaveline.Web.Serving;

/// <summary>Addresses of pages about one car.</summary>
internal static class CarAddress
{
    /// <summary>The car page.</summary>
    public static string Car(string name) => $"car?car={Uri.EscapeDataString(name)}";

    /// <summary>The pass page.</summary>
    public static string Pass(string name) => $"pass?car={Uri.EscapeDataString(name)}";

    /// <summary>A download of the car page.</summary>
    public static string Download(string what, string name) => $"download/{what}?car={Uri.EscapeDataString(name)}";
}
