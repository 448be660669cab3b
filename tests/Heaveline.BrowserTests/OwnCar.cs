namespace Heaveline.BrowserTests;

/// <summary>A copy of an example under a name of a test's own, gone with the test: what is saved there does not meet other tests.</summary>
internal sealed class OwnCar : IDisposable
{
    private readonly Served served;

    public OwnCar(Served served, string of = "fern-saloon")
    {
        this.served = served;
        Name = $"own-{Guid.NewGuid():N}";
        File.Copy(System.IO.Path.Combine(served.Garage, of + ".yaml"), Path);
        Before = Text;
    }

    /// <summary>The car's name in the garage.</summary>
    public string Name { get; }

    /// <summary>Its text when the test began.</summary>
    public string Before { get; }

    /// <summary>Its text now.</summary>
    public string Text => File.ReadAllText(Path);

    /// <summary>Its address on the car page.</summary>
    public string Address(string open = "") => $"/car?car={Name}{(open.Length > 0 ? "&open=" + Uri.EscapeDataString(open) : "")}";

    public void Dispose()
    {
        foreach (var file in Directory.EnumerateFiles(served.Garage, Name + "*", SearchOption.AllDirectories).ToList())
        {
            File.Delete(file);
        }
    }

    private string Path => System.IO.Path.Combine(served.Garage, Name + ".yaml");
}
