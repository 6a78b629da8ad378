using System.IO.Compression;
using Grpc.Core;
using Grpc.Net.Compression;

namespace FleetTrend.Api;

/// <summary>Compression of gRPC messages, with an end: a few bytes that unfold into gigabytes are refused at the limit of a message.</summary>
/// <param name="compression">How messages are compressed.</param>
internal sealed class BoundedCompression(ICompressionProvider compression) : ICompressionProvider
{
    /// <inheritdoc/>
    public string EncodingName => compression.EncodingName;

    /// <inheritdoc/>
    public Stream CreateCompressionStream(Stream stream, CompressionLevel? compressionLevel) =>
        compression.CreateCompressionStream(stream, compressionLevel);

    /// <inheritdoc/>
    public Stream CreateDecompressionStream(Stream stream) => new BoundedStream(compression.CreateDecompressionStream(stream));

    private sealed class BoundedStream(Stream unfolded) : Stream
    {
        private long readSoFar;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => readSoFar;
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override int Read(Span<byte> buffer)
        {
            var read = unfolded.Read(buffer);
            readSoFar += read;
            return readSoFar <= BodyLimits.MostMessageBytes ? read : throw BodyLimits.TooLarge.ToRpcException();
        }

        public override void Flush() => unfolded.Flush();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        protected override void Dispose(bool disposing)
        {
            if (disposing)
                unfolded.Dispose();
            base.Dispose(disposing);
        }
    }
}
