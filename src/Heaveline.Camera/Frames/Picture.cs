namespace Heaveline.Camera.Frames;

/// <summary>One frame of a film, in grey.</summary>
/// <param name="Index">Its place in the film, from 0.</param>
/// <param name="Time">Its own presentation time, s.</param>
/// <param name="Grey">Brightness 0 to 255, one byte a pixel. The next frame is read into the same place: whoever keeps it makes a copy.</param>
internal readonly record struct Picture(int Index, double Time, Mat Grey);
