using Heaveline.Camera.Frames;

namespace Heaveline.Camera.Tracks;

/// <summary>How the camera has turned between two frames.</summary>
/// <param name="Motion">Where a point that stands still has come to.</param>
/// <param name="Kept">Points of the background that agree.</param>
/// <param name="Dropped">Points that do not, or were lost.</param>
/// <param name="Doubt">Standard deviation of a place that the motion tells, px.</param>
/// <param name="IsSeen">Whether the background said so; else the camera is taken to stand as in the frame before.</param>
internal readonly record struct CameraTurn(Homography Motion, int Kept, int Dropped, double Doubt, bool IsSeen)
{
    /// <summary>The same from another frame on.</summary>
    /// <param name="back">From that frame to the one that this is counted from.</param>
    public CameraTurn From(Homography back) => this with { Motion = Motion.After(back) };
}
