package hourly
import "testing"
func BenchmarkRooms(b *testing.B){
 r:=opened(b,"../examples/demo.yaml"); start:=r.Start(); b.ReportAllocs()
 b.ResetTimer()
 for b.Loop() { s:=start; sp:=Span{Last:8760}; if err:=r.Live(&s,&sp);err!=nil{b.Fatal(err)} }
}
