using System.Globalization;
using System.Text;
using Mastwright.Evidence;
using Mastwright.Storage.Files;

namespace Mastwright.Storage.Demo;

/// <summary>The invented records as a file of the kind that a keeper would have.</summary>
public static class SkerrinRecordFile
{
    /// <summary>The seed of the records that the demo shows.</summary>
    public const ulong DemoSeed = 7;

    /// <summary>Writes the records as CSV; the same bytes on every machine.</summary>
    /// <param name="path">The file; written over.</param>
    /// <exception cref="IOException">It cannot be written.</exception>
    public static void Write(string path) => WholeFile.Write(path, stream =>
    {
        using StreamWriter text = new(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), 1 << 16, leaveOpen: true) { NewLine = "\n" };
        text.WriteLine("time_utc,heard_by,made_by,sent_by,counter,level_dbm,ratio_db,hops");
        foreach (ReceptionRecord record in new SkerrinRecords(DemoSeed).All())
        {
            string time = DateTimeOffset.UnixEpoch.AddTicks(10 * record.TimeMicroseconds).ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
            text.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{time},{record.Receiver},{record.Originator},{record.LastSender},{record.PacketId},{record.LevelDbm:0.0},{record.SnrDb:0.00},{record.HopsTaken}"));
        }
    });
}
