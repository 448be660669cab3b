namespace Heaveline.Camera.Frames;

/// <summary>A film as its frames, one after the other, of which one at a time is in memory.</summary>
internal interface IPictures
{
    /// <summary>What it is called.</summary>
    string Name { get; }

    /// <summary>Width of the picture, pixels, as it is seen.</summary>
    int Width { get; }

    /// <summary>Height of the picture, pixels, as it is seen.</summary>
    int Height { get; }

    /// <summary>How many frames there are about, for progress; null where that is not known beforehand.</summary>
    int? About { get; }

    /// <summary>The frames from the first on.</summary>
    /// <param name="stop">Stops the reading.</param>
    IEnumerable<Picture> Pictures(CancellationToken stop = default);
}
